import { type Outcome, ok, refuse } from "../../core/base/outcome.ts";
import { kindOfFile } from "../../schemas/text.ts";
import { pictureSource } from "./pictureSource.ts";
import type { Source } from "./source.ts";

/** A file larger than this is not read, bytes: a manual of 500 scanned pages has about 200 MB. */
const MOST_BYTES = 500_000_000;

/**
 * The printed pages in a file. The PDF reader is loaded when the first PDF comes. Refuses `printed-...` for what is neither
 * PDF nor picture, `pdf-...` and `picture-...` for one that cannot be read.
 */
export async function sourceOf(file: File): Promise<Outcome<Source>> {
  if (file.size > MOST_BYTES) return refuse("printed-large", { most: MOST_BYTES / 1e6 });
  const read = await bytesIn(file);
  if (!read.ok) return read;
  const bytes = read.value;
  if (bytes.length === 0) return refuse("printed-empty");
  const name = nameOf(file);
  if (isPdf(bytes)) return (await import("./pdfSource.ts")).pdfSource(name, bytes);
  const what = kindOfFile(bytes) ?? "a file of another kind";
  const source = await pictureSource(name, bytes);
  return source.ok || source.refusal.code !== "picture-kind" ? source : refuse("printed-kind", { what });
}

async function bytesIn(file: File): Promise<Outcome<Uint8Array<ArrayBuffer>>> {
  try {
    return ok(new Uint8Array(await file.arrayBuffer()));
  } catch {
    return refuse("file-unreadable", { file: file.name });
  }
}

/** Readers look for the mark in the first 1024 bytes (ISO 32000-1, Annex H.3). */
function isPdf(bytes: Uint8Array): boolean {
  return String.fromCharCode(...bytes.subarray(0, 1_024)).includes("%PDF-");
}

const LONGEST_NAME = 120;

/** What is pasted has a name that says nothing. */
function nameOf({ name }: File): string {
  return /^image\.(png|jpe?g|webp)$/i.test(name) ? "Pasted picture" : name.slice(0, LONGEST_NAME);
}
