import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Door, Input } from "./door.ts";
import { bytesOf } from "./mutate.ts";
import type { Fault } from "./task.ts";

const CORPUS = join(import.meta.dirname, "corpus");

/** Keeps an input that a door did not take rightly, for the tests to try again; comes back with its file. */
export function keepFault(door: Door, { input }: Fault): string {
  const folder = join(CORPUS, door.name.replaceAll(/[ ,]+/g, "-"));
  mkdirSync(folder, { recursive: true });
  const hash = createHash("sha256").update(bytesOf(input)).digest("hex").slice(0, 12);
  const file = join(folder, `${hash}.${typeof input === "string" ? "txt" : "bin"}`);
  // Signs that are none by themselves would not come back from a file of text.
  writeFileSync(file, typeof input === "string" ? JSON.stringify(input) : input);
  return file.slice(CORPUS.length + 1);
}

/** The inputs that were kept for a door, by the names of their files. */
export function keptFor(door: Door): ReadonlyMap<string, Input> {
  const folder = join(CORPUS, door.name.replaceAll(/[ ,]+/g, "-"));
  if (!existsSync(folder)) return new Map();
  const read = (name: string): Input => {
    const bytes = readFileSync(join(folder, name));
    return name.endsWith(".txt") ? (JSON.parse(bytes.toString()) as string) : Uint8Array.from(bytes);
  };
  return new Map(readdirSync(folder).map((name) => [name, read(name)]));
}
