import { fileStem } from "../core/base/fileName.ts";

/** A name for a file that every system takes, made from a title: `Roof vents.circuit.json`. */
export function fileNameOf(title: string, ending: string): string {
  const cleaned = title
    .normalize("NFC")
    // biome-ignore lint/suspicious/noControlCharactersInRegex: a file name must not hold them
    .replace(/[/\\:*?"<>|\u0000-\u001f\u007f\u200e\u200f\u202a-\u202e\u2066-\u2069]+/g, " ")
    .replace(/\s+/g, " ");
  return `${fileStem(cleaned.toWellFormed())}.${ending}`;
}
