import { inflateSync } from "node:zlib";

/** First bytes of a frame in a JPEG, by which its size is said: SOF0 to SOF15 without the tables between them (ITU-T T.81). */
const FRAMES = [0xc0, 0xc1, 0xc2, 0xc3, 0xc5, 0xc6, 0xc7, 0xc9, 0xca, 0xcb, 0xcd, 0xce, 0xcf];
/** A picture that unpacks to more than this is none that was brought in. */
const MOST_BYTES = 2 ** 30;

/** Whether the PDF library can embed this PNG or JPEG; what is damaged inside would end it half way. */
export function isPrintable(bytes: Uint8Array): boolean {
  return bytes[0] === 0xff ? hasFrame(bytes) : unpacks(bytes);
}

/** A JPEG whose segments lead to its frame one after the other, no fill bytes between. */
function hasFrame(bytes: Uint8Array): boolean {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let at = 2; at + 4 <= bytes.length; at += 2 + view.getUint16(at + 2)) {
    if (bytes[at] !== 0xff) return false;
    if (FRAMES.includes(bytes[at + 1]!)) return true;
  }
  return false;
}

/** A PNG whose pixels unpack. */
function unpacks(bytes: Uint8Array): boolean {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const packed: Uint8Array[] = [];
  for (let at = 8; at + 12 <= bytes.length; ) {
    const length = view.getUint32(at);
    const name = String.fromCharCode(...bytes.subarray(at + 4, at + 8));
    if (name === "IDAT") packed.push(bytes.subarray(at + 8, at + 8 + length));
    at += 12 + length;
  }
  try {
    return inflateSync(Buffer.concat(packed), { maxOutputLength: MOST_BYTES }).length > 0;
  } catch {
    return false;
  }
}
