import { type Outcome, ok, refuse } from "../core/base/outcome.ts";
import { LIMITS } from "./limits.ts";

/** First bytes of files that people take for a circuit file, and what to call them. */
const SIGNATURES: readonly (readonly [string, string])[] = [
  ["\u0089PNG", "a PNG picture"],
  ["\u00ff\u00d8\u00ff", "a JPEG picture"],
  ["GIF8", "a GIF picture"],
  ["BM", "a BMP picture"],
  ["II*\u0000", "a TIFF picture"],
  ["MM\u0000*", "a TIFF picture"],
  ["RIFF", "a WebP picture or a recording"],
  ["%PDF", "a PDF"],
  ["PK\u0003\u0004", "a packed archive"],
  ["\u001f\u008b", "a packed archive"],
  ["\u0000\u0000\u0000\u000cjP  ", "a JPEG 2000 picture"],
  ["SQLite format 3", "a database"],
  ["\u00ff\u00fe", "text in UTF-16, not UTF-8"],
  ["\u00fe\u00ff", "text in UTF-16, not UTF-8"],
];

/**
 * The text of a file. A byte order mark is dropped. Refuses `file-too-large` before anything is read, `file-not-text`
 * for pictures, archives and other bytes, `file-empty`, and `file-not-json` for text that cannot be JSON at all.
 */
export function textOf(file: string | Uint8Array): Outcome<string> {
  if (file.length > LIMITS.bytes) return refuse("file-too-large", { limit: LIMITS.bytes / 1_000_000 });
  const decoded = typeof file === "string" ? ok(file) : decode(file);
  if (!decoded.ok) return decoded;
  const text = decoded.value.startsWith("\ufeff") ? decoded.value.slice(1) : decoded.value;
  if (text.trim() === "") return refuse("file-empty");
  if (text.includes("\u0000")) return refuse("file-not-text", { what: "not a text" });
  const first = text.trimStart()[0]!;
  return first === "{" ? ok(text) : refuse("file-not-json", { first: text.trimStart().slice(0, 12).split("\n")[0]! });
}

/** What a file is by its first bytes, with its article; null where they are not known. */
export function kindOfFile(bytes: Uint8Array): string | null {
  const head = String.fromCharCode(...bytes.subarray(0, 16));
  // Four bytes of length come first.
  if (head.startsWith("ftyp", 4)) return "a HEIC picture or a film";
  return SIGNATURES.find(([signature]) => head.startsWith(signature))?.[1] ?? null;
}

function decode(bytes: Uint8Array): Outcome<string> {
  const what = kindOfFile(bytes);
  if (what !== null) return refuse("file-not-text", { what });
  try {
    return ok(new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes));
  } catch {
    return refuse("file-not-text", { what: "not a text" });
  }
}
