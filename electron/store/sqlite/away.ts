import { statSync } from "node:fs";
import { mkdir, rename, rm } from "node:fs/promises";
import { dirname } from "node:path";
import { flushed, standAlone } from "./backup.ts";
import type { Connection } from "./connect.ts";

/** What tells the file at a path from another one that comes to lie there; null where none lies there. */
export function identityOf(file: string): string | null {
  const about = statSync(file, { bigint: true, throwIfNoEntry: false });
  return about ? `${about.dev} ${about.ino}` : null;
}

/**
 * Writes an open library whose file was taken away from under it, with its folder or alone, whole to where it was: while it is open all of it can
 * still be read. Throws what the disk says where that cannot be; it is open still then.
 */
export async function writeAnew(connection: Connection, file: string): Promise<void> {
  const beside = `${file}.part`;
  await mkdir(dirname(file), { recursive: true, mode: 0o700 });
  for (const ending of ["-wal", "-shm"]) await rm(file + ending, { force: true });
  await rm(beside, { force: true });
  await connection.backup(beside);
  standAlone(beside);
  await flushed(beside);
  await rename(beside, file);
}
