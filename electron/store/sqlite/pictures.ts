import { type Outcome, ok, refuse } from "../../../core/base/outcome.ts";
import type { Picture } from "../../../core/circuit/circuit.ts";
import { hashOfBytes, type PictureFile, SPARE_DAYS } from "../pictureFile.ts";
import type { Connection } from "./connect.ts";
import type { Store } from "./store.ts";

const DAY_MS = 86_400_000;

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
