import { createReadStream } from "node:fs";
import { open, rename, rm, stat } from "node:fs/promises";
import { dirname } from "node:path";
import { type Outcome, ok, refuse } from "../core/base/outcome.ts";
import type { Circuit } from "../core/circuit/circuit.ts";
import { readCircuit } from "../schemas/circuit.ts";
import { LIMITS } from "../schemas/limits.ts";

/** Reads a circuit file. A missing, unreadable or too large file is refused before anything is parsed. */
export async function readCircuitFile(path: string): Promise<Outcome<Circuit>> {
  const bytes = await readBytes(path);
  return bytes.ok ? readCircuit(bytes.value) : bytes;
}

async function readBytes(path: string): Promise<Outcome<Uint8Array>> {
  try {
    const about = await stat(path);
    if (about.isDirectory()) return refuse("file-folder", { file: path });
    if (about.size > LIMITS.bytes) return refuse("file-too-large", { limit: LIMITS.bytes / 1e6 });
    const bytes = await readUpTo(path, LIMITS.bytes + 1);
    if (bytes.length > LIMITS.bytes) return refuse("file-too-large", { limit: LIMITS.bytes / 1e6 });
    return ok(bytes);
  } catch (error) {
    return refuse(codeOf(error) === "ENOENT" ? "file-missing" : "file-unreadable", { file: path });
  }
}

/** The first so many bytes of a file: a device tells no size, and a file may grow while it is read. */
async function readUpTo(path: string, most: number): Promise<Uint8Array> {
  const pieces: Buffer[] = [];
  for await (const piece of createReadStream(path, { end: most - 1 })) pieces.push(piece);
  return Buffer.concat(pieces);
}

/**
 * Writes a file whole or not at all: beside its place first, then moved there. Refuses a folder that is not there and
 * a place that cannot be written. `mode` is what the system's own mask leaves of it.
 */
export async function writeFileWhole(path: string, content: string | Uint8Array, mode = 0o666): Promise<Outcome<null>> {
  const beside = `${path}.${process.pid}.part`;
  try {
    const handle = await open(beside, "w", mode);
    try {
      await handle.writeFile(content);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(beside, path);
    await flushFolder(dirname(path));
    return ok(null);
  } catch (error) {
    await rm(beside, { force: true });
    return refuse(codeOf(error) === "ENOENT" ? "file-no-folder" : "file-unwritable", { file: path });
  }
}

/** Puts a file's new name on the disk too, where the system lets a folder be flushed; Windows, for one, does not. */
async function flushFolder(folder: string): Promise<void> {
  try {
    const handle = await open(folder, "r");
    await handle.sync().finally(() => handle.close());
  } catch {}
}

function codeOf(error: unknown): string {
  return error instanceof Error && "code" in error ? String(error.code) : "";
}
