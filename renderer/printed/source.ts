import type { Outcome, Refusal } from "../../core/base/outcome.ts";
import type { Millimetres } from "../../core/base/units.ts";

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

/** Whether a file may hold printed pages, by what its system says of it; what it really is is seen when it is read. */
export function mayBePrinted({ name, type }: Pick<File, "name" | "type">): boolean {
  return type.startsWith("image/") || type === "application/pdf" || /\.(pdf|png|jpe?g|webp)$/i.test(name);
}

/** What a page is called when it is brought in. */
export function titleOf({ name, pages }: Pick<Source, "name" | "pages">, page: number): string {
  return pages === 1 ? name : `${name}, page ${page}`;
}
