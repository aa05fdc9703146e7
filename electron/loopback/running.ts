import { readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { z } from "zod";
import { writeFileWhole } from "../files.ts";

const LOCK = "running.json";
/** How long a running one has to answer, in milliseconds. */
const ANSWER_MS = 3_000;

const lockShape = z.object({ pid: z.int().positive(), port: z.int().min(1).max(65_535), key: z.string().min(20) });

/** What is written beside the library while a browser is served from it. */
export type Lock = z.infer<typeof lockShape>;

/** Writes the lock beside the library, for this person's eyes only: its key lets a second start in. */
export async function writeLock(folder: string, lock: Lock): Promise<void> {
  await writeFileWhole(join(folder, LOCK), `${JSON.stringify(lock)}\n`, 0o600);
}

/** Takes the lock away where it is this process's own. One that stays, as on a disk that may only be read now, answers nothing. */
export function removeLock(folder: string): void {
  if (readLock(folder)?.pid !== process.pid) return;
  try {
    rmSync(join(folder, LOCK), { force: true });
  } catch {}
}

/**
 * An address of the Wirefathom that runs on this library already, which is asked to open this file; null where none
 * runs. A lock that was left behind answers nothing and is not heeded.
 */
export async function addressOfRunning(folder: string, file: string | null): Promise<string | null> {
  const lock = readLock(folder);
  if (!lock || lock.pid === process.pid) return null;
  try {
    const response = await fetch(`http://127.0.0.1:${lock.port}/again`, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify({ key: lock.key, ...(file !== null && { file }) }),
      signal: AbortSignal.timeout(ANSWER_MS),
    });
    if (!response.ok) return null;
    const { address } = (await response.json()) as { readonly address: unknown };
    return typeof address === "string" && address.startsWith(`http://127.0.0.1:${lock.port}/`) ? address : null;
  } catch {
    return null;
  }
}

function readLock(folder: string): Lock | null {
  try {
    return lockShape.parse(JSON.parse(readFileSync(join(folder, LOCK), "utf8")));
  } catch {
    return null;
  }
}
