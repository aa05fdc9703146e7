import { type Outcome, ok, refuse } from "../../core/base/outcome.ts";
import { LIMITS } from "../../schemas/limits.ts";
import { type PictureHead, pictureHead, pictureRefusal } from "../../schemas/pictureHead.ts";
import { encoded, whiteCanvas } from "./encoded.ts";
import type { Source } from "./source.ts";

/** More pixels than this are not decoded: four bytes each come to 600 MB. */
const MOST_DECODED = 150_000_000;
/** A larger picture is brought down to this while it is decoded: A3 at 300 dots an inch is about as fine. */
const MOST_KEPT = 16_000_000;

/** What is done with a picture's file before it is kept. */
export type Step = "keep" | "redraw";

/**
 * Whether the file of a picture is kept as it is, or drawn anew because it is too large or lies on its side. Refuses
 * `picture-huge`.
 */
export function stepFor(head: PictureHead, bytes: number): Outcome<Step> {
  const pixels = head.widthPx * head.heightPx;
  if (pixels > MOST_DECODED) {
    return refuse("picture-huge", { millions: Math.round(pixels / 1e6), most: MOST_DECODED / 1e6 });
  }
  return ok(head.orientation === 1 && pictureRefusal(head, bytes) === null ? "keep" : "redraw");
}

/** The width and height that a picture of this size is brought down to; the same where it is small enough. */
export function keptSize(width: number, height: number): readonly [number, number] {
  const scale = Math.min(1, Math.sqrt(MOST_KEPT / (width * height)), LIMITS.pictureSide / Math.max(width, height));
  return [Math.max(1, Math.floor(width * scale)), Math.max(1, Math.floor(height * scale))];
}

/** A picture as a source of one page. Refuses as `pictureHead` does, `picture-huge`, and `picture-damaged` where it cannot be decoded. */
export async function pictureSource(name: string, bytes: Uint8Array<ArrayBuffer>): Promise<Outcome<Source>> {
  const head = pictureHead(bytes);
  if (!head.ok) return head;
  const step = stepFor(head.value, bytes.length);
  if (!step.ok) return step;
  const bitmap = await decoded(new Blob([bytes], { type: head.value.mime }), head.value);
  if (!bitmap) return refuse("picture-damaged");
  return ok({
    name,
    pages: 1,
    sizeOf: async () => null,
    paint: async (_, canvas, most) => {
      const scale = Math.min(1, most / Math.max(bitmap.width, bitmap.height));
      canvas.width = Math.max(1, Math.round(bitmap.width * scale));
      canvas.height = Math.max(1, Math.round(bitmap.height * scale));
      const context = canvas.getContext("2d");
      if (!context) return;
      context.imageSmoothingQuality = "high";
      context.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
    },
    picture: async () => ok({ bytes: step.value === "keep" ? bytes : await redrawn(bitmap), note: null }),
    close: () => bitmap.close(),
  });
}

/** The picture upright, brought down while it is decoded where it is large; null where it is damaged. */
async function decoded(file: Blob, { widthPx, heightPx, orientation }: PictureHead): Promise<ImageBitmap | null> {
  const [width] = keptSize(widthPx, heightPx);
  // Only one side is given, since the two may change places when it is turned upright.
  const isSmaller = width < widthPx && orientation === 1;
  try {
    return await createImageBitmap(file, isSmaller ? { resizeWidth: width, resizeQuality: "high" } : {});
  } catch {
    return null;
  }
}

async function redrawn(bitmap: ImageBitmap): Promise<Uint8Array> {
  const [width, height] = keptSize(bitmap.width, bitmap.height);
  const [canvas, context] = whiteCanvas(width, height);
  context.imageSmoothingQuality = "high";
  context.drawImage(bitmap, 0, 0, width, height);
  return encoded(canvas);
}
