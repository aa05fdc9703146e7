import { createReadStream } from "node:fs";
import { open, rename, rm, stat } from "node:fs/promises";
import { basename, dirname } from "node:path";
import { type Outcome, ok, refuse } from "../core/base/outcome.ts";
import type { Circuit } from "../core/circuit/circuit.ts";
import { readCircuit } from "../schemas/circuit.ts";
import { LIMITS } from "../schemas/limits.ts";
import { textOf } from "../schemas/text.ts";
import { isArchive } from "./pack/entries.ts";
import { type Packed, unpackCircuit } from "./pack/pack.ts";

/** Enough of a file to tell an archive. */
const HEAD_BYTES = 4;

/**
 * Reads a circuit file, plain or packed with its pictures. A missing, unreadable or too large file is refused before anything
 * is parsed.
 */
export async function readPackedFile(path: string): Promise<Outcome<Packed>> {
  const bytes = await readBytes(path);
  if (!bytes.ok) return bytes;
  if (isArchive(bytes.value)) return unpackCircuit(bytes.value);
  const circuit = readCircuit(bytes.value);
  return circuit.ok ? ok({ circuit: circuit.value, pictures: [] }) : circuit;
}

/** The same without the pictures. */
export async function readCircuitFile(path: string): Promise<Outcome<Circuit>> {
  const packed = await readPackedFile(path);
  return packed.ok ? ok(packed.value.circuit) : packed;
}

/** The bytes of a file that may be read whole; refuses as `readPackedFile` does before it parses. */
export async function readBytes(path: string): Promise<Outcome<Uint8Array>> {
  try {
    const about = await stat(path);
    if (about.isDirectory()) return refuse("file-folder", { file: path });
    const most = isArchive(await readUpTo(path, HEAD_BYTES)) ? LIMITS.packBytes : LIMITS.bytes;
    const tooLarge = refuse("file-too-large", { limit: most / 1e6 });
    if (about.size > most) return tooLarge;
    const bytes = await readUpTo(path, most + 1);
    return bytes.length > most ? tooLarge : ok(bytes);
  } catch (error) {
    return refuse(codeOf(error) === "ENOENT" ? "file-missing" : "file-unreadable", { file: path });
  }
}

/** The text of a file and its bare name, for the page to open. Refuses as `readBytes`, and what is no text. */
export async function textIn(path: string): Promise<Outcome<{ readonly name: string; readonly text: string }>> {
  const bytes = await readBytes(path);
  if (!bytes.ok) return bytes;
  const text = textOf(bytes.value);
  return text.ok ? ok({ name: basename(path), text: text.value }) : text;
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
