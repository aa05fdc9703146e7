import { existsSync, writeFileSync } from "node:fs";
import { rm } from "node:fs/promises";

/**
 * Notes beside a library that damage was met in it while it was open: the next start puts it right, though the short check at a start
 * may find nothing.
 */
export function markSuspect(file: string): void {
  try {
    writeFileSync(noteOf(file), "");
  } catch {
    // The disk may let nothing be written any more; the check at the next start is left then.
  }
}

/** Whether damage was met when the library was open last. */
export function isSuspect(file: string): boolean {
  return existsSync(noteOf(file));
}

/** Takes the note away, once the library was put right. */
export async function noLongerSuspect(file: string): Promise<void> {
  await rm(noteOf(file), { force: true });
}

function noteOf(file: string): string {
  return `${file}.suspect`;
}
