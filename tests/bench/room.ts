import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** A fresh folder for a library or a profile; `remove` takes it away. */
export function freshFolder(): { readonly path: string; remove(): void } {
  const path = mkdtempSync(join(tmpdir(), "wirefathom-bench-"));
  // Chromium may still be writing its last lines.
  return { path, remove: () => rmSync(path, { recursive: true, force: true, maxRetries: 10, retryDelay: 100 }) };
}

/** What comes of work in a fresh folder, which is taken away when that has ended, however it did. */
export function inRoom<T>(work: (room: string) => T): T {
  const { path, remove } = freshFolder();
  let isLater = false;
  try {
    const made = work(path);
    isLater = made instanceof Promise;
    return isLater ? ((made as Promise<unknown>).finally(remove) as T) : made;
  } finally {
    if (!isLater) remove();
  }
}
