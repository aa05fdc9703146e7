import { type Outcome, ok, type Refusal, refuse } from "../core/base/outcome.ts";
import type { Picture } from "../core/circuit/circuit.ts";
import { LIMITS } from "./limits.ts";
import { kindOfFile } from "./text.ts";

/** What the head of a picture's file says of it. */
export interface PictureHead extends Omit<Picture, "sha256"> {
  /** How a JPEG is to be turned before it is shown, 1 to 8 as Exif 2.3 counts; 1 is as it lies. */
  readonly orientation: number;
}

/**
 * What kind of picture these bytes are and how large, read from the head alone: nothing is decoded. Refuses `picture-empty`,
 * `picture-kind` for anything but PNG, JPEG and WebP, and `picture-damaged` where the head is cut off or has no size.
 */
export function pictureHead(bytes: Uint8Array): Outcome<PictureHead> {
  if (bytes.length === 0) return refuse("picture-empty");
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  try {
    const head = pngHead(view) ?? jpegHead(view) ?? webpHead(view);
    if (!head) return refuse("picture-kind", { what: kindOfFile(bytes) ?? "no picture" });
    return head.widthPx > 0 && head.heightPx > 0 ? ok(head) : refuse("picture-damaged");
  } catch (error) {
    // A head that ends before what it promises.
    if (error instanceof RangeError) return refuse("picture-damaged");
    throw error;
  }
}

/** Why a picture of this size cannot be kept: `picture-bytes`, `picture-side`, `picture-pixels`. Null where it can. */
export function pictureRefusal(
  { widthPx, heightPx }: Pick<Picture, "widthPx" | "heightPx">,
  bytes: number,
): Refusal | null {
  if (bytes > LIMITS.pictureBytes) return refuse("picture-bytes", { most: LIMITS.pictureBytes / 1e6 }).refusal;
  if (Math.max(widthPx, heightPx) > LIMITS.pictureSide)
    return refuse("picture-side", { most: LIMITS.pictureSide }).refusal;
  if (widthPx * heightPx <= LIMITS.picturePixels) return null;
  return refuse("picture-pixels", { most: LIMITS.picturePixels / 1e6 }).refusal;
}

function isAscii(view: DataView, at: number, text: string): boolean {
  return [...text].every(
    (sign, index) => at + index < view.byteLength && view.getUint8(at + index) === sign.charCodeAt(0),
  );
}

/** PNG (ISO/IEC 15948): eight bytes of signature, then the chunk IHDR with width and height. */
function pngHead(view: DataView): PictureHead | null {
  if (!isAscii(view, 0, "\u0089PNG\r\n\u001a\n")) return null;
  if (!isAscii(view, 12, "IHDR")) return { mime: "image/png", widthPx: 0, heightPx: 0, orientation: 1 };
  return { mime: "image/png", widthPx: view.getUint32(16), heightPx: view.getUint32(20), orientation: 1 };
}

/** JPEG (ITU-T T.81): segments from marker to marker; the frame header, SOF0 to SOF15, has height and width. */
function jpegHead(view: DataView): PictureHead | null {
  if (view.byteLength < 3 || view.getUint16(0) !== 0xffd8 || view.getUint8(2) !== 0xff) return null;
  let orientation = 1;
  for (let at = 2; ; ) {
    if (view.getUint8(at) !== 0xff) throw new RangeError("no marker");
    const marker = view.getUint8(at + 1);
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    const length = view.getUint16(at + 2);
    if (marker === 0xe1 && isAscii(view, at + 4, "Exif\0\0")) orientation = exifOrientation(view, at + 10) ?? 1;
    // C4, C8 and CC of this row define tables.
    if (marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker)) {
      return { mime: "image/jpeg", heightPx: view.getUint16(at + 5), widthPx: view.getUint16(at + 7), orientation };
    }
    // After the start of scan comes no head any more.
    if (marker === 0xda || marker === 0xd9) throw new RangeError("no frame");
    at += 2 + length;
  }
}

/** Tag 0x0112 of the first directory of Exif data, which are laid out as a TIFF is; null where it is not there or wrong. */
function exifOrientation(view: DataView, start: number): number | null {
  const isLittle = isAscii(view, start, "II");
  const directory = start + view.getUint32(start + 4, isLittle);
  if (directory + 2 > view.byteLength) return null;
  const entries = view.getUint16(directory, isLittle);
  for (let index = 0; index < entries; index++) {
    const entry = directory + 2 + index * 12;
    if (entry + 12 > view.byteLength) return null;
    if (view.getUint16(entry, isLittle) !== 0x0112) continue;
    const orientation = view.getUint16(entry + 8, isLittle);
    return orientation >= 1 && orientation <= 8 ? orientation : null;
  }
  return null;
}

/** WebP (RFC 9649): a RIFF file whose first chunk is VP8X, VP8L or VP8. */
function webpHead(view: DataView): PictureHead | null {
  if (!isAscii(view, 0, "RIFF") || !isAscii(view, 8, "WEBP")) return null;
  const head = (widthPx: number, heightPx: number): PictureHead => ({
    mime: "image/webp",
    widthPx,
    heightPx,
    orientation: 1,
  });
  if (isAscii(view, 12, "VP8X")) return head(1 + uint24(view, 24), 1 + uint24(view, 27));
  if (isAscii(view, 12, "VP8L")) {
    const bits = view.getUint32(21, true);
    return head(1 + (bits & 0x3fff), 1 + ((bits >> 14) & 0x3fff));
  }
  if (isAscii(view, 12, "VP8 ")) return head(view.getUint16(26, true) & 0x3fff, view.getUint16(28, true) & 0x3fff);
  return head(0, 0);
}

function uint24(view: DataView, at: number): number {
  return view.getUint16(at, true) | (view.getUint8(at + 2) << 16);
}
