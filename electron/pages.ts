import { readFile, realpath } from "node:fs/promises";
import { extname, join, sep } from "node:path";

/** Kinds of file that the built page is made of; nothing else is given out. */
const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".mjs": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".ico": "image/x-icon",
  ".woff2": "font/woff2",
  ".woff": "font/woff",
  ".wasm": "application/wasm",
  ".txt": "text/plain; charset=utf-8",
  // What reading a PDF needs: tables of characters, faces of the standard fonts, a profile of colours.
  ".bcmap": "application/octet-stream",
  ".pfb": "application/octet-stream",
  ".ttf": "font/ttf",
  ".icc": "application/octet-stream",
};

/** A file of the built page. */
export interface PageFile {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly type: string;
}

/**
 * The file that an address means, or null: where there is none, where its kind is not given out, and wherever the way
 * to it leads out of the folder, by dots, by another system's separators, by a second encoding or by a link.
 */
export async function pageFile(folder: string, pathname: string): Promise<PageFile | null> {
  const path = pathInside(folder, pathname);
  const type = path && TYPES[extname(path).toLowerCase()];
  if (!path || !type) return null;
  try {
    const [root, real] = await Promise.all([realpath(folder), realpath(path)]);
    if (!real.startsWith(root + sep)) return null;
    return { bytes: new Uint8Array(await readFile(real)), type };
  } catch {
    return null;
  }
}

/** The path inside the folder that an address means, or null where it means none. Nothing is looked at. */
export function pathInside(folder: string, pathname: string): string | null {
  let plain: string;
  try {
    plain = decodeURIComponent(pathname);
  } catch {
    return null;
  }
  const steps = (plain.endsWith("/") ? `${plain}index.html` : plain).split("/").slice(1);
  const isPlain = (step: string): boolean => /^[\p{L}\p{N}_@-][\p{L}\p{N}_.@ -]*$/u.test(step);
  return plain.startsWith("/") && steps.every(isPlain) ? join(folder, ...steps) : null;
}
