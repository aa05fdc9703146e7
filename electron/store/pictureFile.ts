import { createHash } from "node:crypto";
import { type Outcome, ok, refuse } from "../../core/base/outcome.ts";
import type { Circuit, Picture } from "../../core/circuit/circuit.ts";
import { picturesShown } from "../../core/circuit/pictures.ts";
import { pictureHead, pictureRefusal } from "../../schemas/pictureHead.ts";

/** Days that a picture stays which no version names, as long as a circuit does in the bin. */
export const SPARE_DAYS = 30;

/** A picture with its bytes. */
export interface PictureFile {
  readonly picture: Picture;
  readonly bytes: Uint8Array;
}

/**
 * Bytes as a picture, judged by their head: what it is and how large. Refuses as `pictureHead` and
 * `pictureRefusal` do, and `picture-turned` where it must be turned to be seen: its width would be its height.
 */
export function pictureOf(bytes: Uint8Array): Outcome<PictureFile> {
  const head = pictureHead(bytes);
  if (!head.ok) return head;
  const { mime, widthPx, heightPx, orientation } = head.value;
  if (orientation !== 1) return refuse("picture-turned");
  const refusal = pictureRefusal(head.value, bytes.length);
  if (refusal) return { ok: false, refusal };
  return ok({ picture: { sha256: hashOfBytes(bytes), mime, widthPx, heightPx }, bytes });
}

/** SHA-256 of bytes, in hex. */
export function hashOfBytes(bytes: Uint8Array): string {
  return createHash("sha256").update(bytes).digest("hex");
}

/** Hashes of the pictures that a circuit shows, each once. */
export function picturesIn(circuit: Circuit): readonly string[] {
  return [...new Set(picturesShown(circuit).map(({ image }) => image.sha256))];
}
