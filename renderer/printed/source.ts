import { type Outcome, ok, type Refusal, refuse } from "../../core/base/outcome.ts";
import type { Millimetres } from "../../core/base/units.ts";
import { kindOfFile } from "../../schemas/text.ts";
import { pictureSource } from "./pictureSource.ts";

/** A file with printed pages in it. Numbers of pages count from 1. */
export interface Source {
  readonly name: string;
  readonly pages: number;
  /** Width and height of a page on paper; null where the file does not say, as a photograph. */
  sizeOf(page: number): Promise<readonly [Millimetres, Millimetres] | null>;
  /** Paints a page small, so many pixels wide and high at most. */
  paint(page: number, canvas: HTMLCanvasElement, most: number): Promise<void>;
  /** A page as the picture that is kept, and what must be told of it. */
  picture(page: number, gone: AbortSignal): Promise<Outcome<Pictured>>;
  close(): void;
}

/** A page as a picture, the bytes of its file. */
export interface Pictured {
  readonly bytes: Uint8Array;
  readonly note: Refusal | null;
}

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

/** Whether a file may hold printed pages, by what its system says of it; what it really is is seen when it is read. */
export function mayBePrinted({ name, type }: Pick<File, "name" | "type">): boolean {
  return type.startsWith("image/") || type === "application/pdf" || /\.(pdf|png|jpe?g|webp)$/i.test(name);
}

/** What a page is called when it is brought in. */
export function titleOf({ name, pages }: Pick<Source, "name" | "pages">, page: number): string {
  return pages === 1 ? name : `${name}, page ${page}`;
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
