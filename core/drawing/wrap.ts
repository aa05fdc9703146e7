import type { GridUnits } from "../base/units.ts";
import type { Weight } from "./mark.ts";
import { textWidth } from "./type.ts";

/**
 * The text in lines that fit the width, at least one. Breaks at spaces, but never inside a name (`X5-4`), between a
 * number and its unit, within a range or before a bare + or -. A plain word wider than the line is broken after a hyphen
 * or slash, else between letters; a name wider than the line stands whole and overflows.
 */
export function wrapText(text: string, points: number, weight: Weight, width: GridUnits): string[] {
  const fits = (line: string): boolean => textWidth(line, points, weight) <= width + 1e-6;
  return text.split("\n").flatMap((paragraph) => wrapParagraph(paragraph, fits));
}

function wrapParagraph(paragraph: string, fits: (line: string) => boolean): string[] {
  const lines: string[] = [];
  let open = "";
  for (const piece of unbreakablePieces(paragraph)) {
    const longer = open === "" ? piece : `${open} ${piece}`;
    if (fits(longer)) {
      open = longer;
      continue;
    }
    if (open !== "") lines.push(open);
    const cut = cutPiece(piece, fits);
    lines.push(...cut.slice(0, -1));
    open = cut.at(-1)!;
  }
  return open === "" && lines.length > 0 ? lines : [...lines, open];
}

/** Units that follow a number after a space, and stay with it. */
const UNIT =
  /^(?:[kMmµμ]?[VAWΩΩ]|[kM]?ohms?|milliohms?|volts?|amps?|watts?|Ah|mm²?|mm2|cm|m|km|s|h|min|minutes?|seconds?|%|°C|°F|°|Hz|rpm|bar|AWG|pt)[.,;:)]*$/;
const NUMBER_END = /[\d½¼¾]$/;
const NUMBER_START = /^[(<>≤≥±−+-]?\d/;
const BARE_SIGN = /^[−+-][.,;:)]*$/;
const RANGE_SIGN = /^(?:–|−|to)$/;

/** The paragraph cut at its spaces, with what must stay together joined again. */
function unbreakablePieces(paragraph: string): readonly string[] {
  const words = paragraph.split(/[ \t\r]+/).filter((word) => word !== "");
  const pieces: string[] = [];
  words.forEach((word, i) => {
    if (i > 0 && staysWith(words, i)) pieces.push(`${pieces.pop()} ${word}`);
    else pieces.push(word);
  });
  return pieces;
}

/** True where the word may not begin a line after the one before it. */
function staysWith(words: readonly string[], i: number): boolean {
  const word = words[i]!;
  const before = words[i - 1]!;
  const next = words[i + 1] ?? "";
  if (NUMBER_END.test(before) && (UNIT.test(word) || (RANGE_SIGN.test(word) && NUMBER_START.test(next)))) return true;
  if (RANGE_SIGN.test(before) && NUMBER_START.test(word) && NUMBER_END.test(words[i - 2] ?? "")) return true;
  return BARE_SIGN.test(word);
}

/** A piece wider than the line: whole where it holds a figure or a space (a name, a number with its unit), else cut. */
function cutPiece(piece: string, fits: (line: string) => boolean): readonly string[] {
  if (fits(piece) || /[\d\s\u00a0\u202f]/.test(piece)) return [piece];
  const lines: string[] = [];
  let open = "";
  for (const part of piece.split(/(?<=[-/])/)) {
    if (fits(open + part)) {
      open += part;
      continue;
    }
    if (open !== "") lines.push(open);
    open = "";
    for (const letter of part) {
      if (open !== "" && !fits(open + letter)) {
        lines.push(open);
        open = "";
      }
      open += letter;
    }
  }
  return [...lines, open];
}
