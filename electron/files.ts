import { open, rename, rm, stat } from "node:fs/promises";
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
    const handle = await open(path, "r");
    try {
      return ok(await handle.readFile());
    } finally {
      await handle.close();
    }
  } catch (error) {
    return refuse(codeOf(error) === "ENOENT" ? "file-missing" : "file-unreadable", { file: path });
  }
}

/**
 * Writes a file whole or not at all: beside its place first, then moved there. Refuses a folder that is not there and
 * a place that cannot be written.
 */
export async function writeFileWhole(path: string, content: string | Uint8Array): Promise<Outcome<null>> {
  const beside = `${path}.${process.pid}.part`;
  try {
    const handle = await open(beside, "w");
    try {
      await handle.writeFile(content);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(beside, path);
    return ok(null);
  } catch (error) {
    await rm(beside, { force: true });
    return refuse(codeOf(error) === "ENOENT" ? "file-no-folder" : "file-unwritable", { file: path });
  }
}

function codeOf(error: unknown): string {
  return error instanceof Error && "code" in error ? String(error.code) : "";
}
