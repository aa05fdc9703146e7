import { type Outcome, ok, refuse } from "../../../core/base/outcome.ts";
import type { Picture } from "../../../core/circuit/circuit.ts";
import { hashOfBytes, type PictureFile, SPARE_DAYS } from "../pictureFile.ts";
import type { Session } from "./session.ts";
import { sql } from "./sql.ts";

/** Keeps a picture; one that is there already is kept once. A damaged one is put right by it. */
export async function keepPicture(session: Session, { picture, bytes }: PictureFile, now: Date): Promise<void> {
  const { sha256, mime, widthPx, heightPx } = picture;
  await session.run(sql`
    INSERT INTO pictures (sha256, mime, width, height, kept, bytes)
      VALUES (${sha256}, ${mime}, ${widthPx}, ${heightPx}, ${now}, ${Buffer.from(bytes)})
    ON CONFLICT (sha256) DO UPDATE SET kept = excluded.kept, bytes = excluded.bytes`);
}

/** A picture that was kept. Refuses `picture-unknown`, and `picture-changed` where its bytes changed on the disk. */
export async function keptPicture(session: Session, sha256: string): Promise<Outcome<PictureFile>> {
  const row = await session.first<Picture & { readonly bytes: Buffer }>(sql`
    SELECT sha256, mime, width AS "widthPx", height AS "heightPx", bytes FROM pictures WHERE sha256 = ${sha256}`);
  if (!row) return refuse("picture-unknown");
  const { bytes, ...picture } = row;
  return hashOfBytes(bytes) === sha256 ? ok({ picture, bytes }) : refuse("picture-changed");
}

/** Lets go of pictures that no kept version names, once 30 days have gone by since they were brought in. */
export function sweepPictures(session: Session, now: Date): Promise<number> {
  return session.run(sql`
    DELETE FROM pictures WHERE kept < ${now}::timestamptz - make_interval(days => ${SPARE_DAYS}::integer)
      AND NOT EXISTS (SELECT 1 FROM pictured WHERE pictured.sha256 = pictures.sha256)`);
}
