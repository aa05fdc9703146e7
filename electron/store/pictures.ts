import { createHash } from "node:crypto";
import { type Outcome, ok, refuse } from "../../core/base/outcome.ts";
import type { Circuit, Picture } from "../../core/circuit/circuit.ts";
import { picturesShown } from "../../core/circuit/pictures.ts";
import { pictureHead, pictureRefusal } from "../../schemas/pictureHead.ts";
import type { Connection } from "./connect.ts";
import type { Store } from "./open.ts";

/** Days that a picture stays which no version names, as long as a circuit does in the bin. */
const SPARE_DAYS = 30;
const DAY_MS = 86_400_000;

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

/** Keeps a picture; one that is there already is kept once. A damaged one is put right by it. */
export function keepPicture({ connection }: Store, { picture, bytes }: PictureFile, now: Date): void {
  const { sha256, mime, widthPx, heightPx } = picture;
  connection
    .prepare(
      `INSERT INTO pictures (sha256, mime, width, height, kept, bytes) VALUES (?, ?, ?, ?, ?, ?)
         ON CONFLICT (sha256) DO UPDATE SET kept = excluded.kept, bytes = excluded.bytes`,
    )
    .run(sha256, mime, widthPx, heightPx, now.toISOString(), bytes);
}

/** A picture that was kept. Refuses `picture-unknown`, and `picture-changed` where its bytes changed on the disk. */
export function keptPicture({ connection }: Store, sha256: string): Outcome<PictureFile> {
  const row = connection
    .prepare("SELECT sha256, mime, width AS widthPx, height AS heightPx, bytes FROM pictures WHERE sha256 = ?")
    .get(sha256) as (Picture & { readonly bytes: Buffer }) | undefined;
  if (!row) return refuse("picture-unknown");
  const { bytes, ...picture } = row;
  return hashOfBytes(bytes) === sha256 ? ok({ picture, bytes }) : refuse("picture-changed");
}

/** Hashes of the pictures that a circuit shows, each once. */
export function picturesIn(circuit: Circuit): readonly string[] {
  return [...new Set(picturesShown(circuit).map(({ image }) => image.sha256))];
}

/** Notes which pictures a version names, so that none of them is let go while the version is kept. */
export function notePictures(
  connection: Connection,
  circuit: number,
  version: number,
  pictures: readonly string[],
): void {
  const note = connection.prepare("INSERT INTO pictured (circuit, version, sha256) VALUES (?, ?, ?)");
  for (const sha256 of pictures) note.run(circuit, version, sha256);
}

/**
 * Lets go of pictures that no kept version names, once 30 days have gone by since they were brought in: until then an edit
 * that was undone may want them again. Gives how many.
 */
export function sweepPictures({ connection }: Store, now: Date): number {
  const before = new Date(now.getTime() - SPARE_DAYS * DAY_MS).toISOString();
  return connection
    .prepare(
      "DELETE FROM pictures WHERE kept < ? AND NOT EXISTS (SELECT 1 FROM pictured WHERE pictured.sha256 = pictures.sha256)",
    )
    .run(before).changes;
}
