import type { Millimetres } from "../base/units.ts";
import type { Anchor, Mark, Role } from "../drawing/mark.ts";
import { wrapText } from "../drawing/measure.ts";
import { gridUnitsOf, millimetresOf } from "../drawing/scale.ts";
import { text } from "../drawing/shapes.ts";
import { ASCENT, textWidth } from "../drawing/type.ts";
import type { Piece } from "./piece.ts";
import { sizeMm, type TypeSize } from "./sizes.ts";

/** Width of a line of type in millimetres. */
export function widthMm(words: string, type: TypeSize): Millimetres {
  return millimetresOf(textWidth(words, type.points, type.weight));
}

/** The text in lines that fit the width, whatever it is: a name too long for a line is cut after a sign, else anywhere. */
export function linesOf(words: string, type: TypeSize, width: Millimetres): readonly string[] {
  return wrapText(words, type.points, type.weight, gridUnitsOf(width)).flatMap((line) => cutLine(line, type, width));
}

function cutLine(line: string, type: TypeSize, width: Millimetres): readonly string[] {
  const fits = (piece: string): boolean => widthMm(piece, type) <= width + 1e-6;
  if (fits(line)) return [line];
  const lines: string[] = [];
  let open = "";
  for (const sign of line) {
    if (open === "" || fits(open + sign)) {
      open += sign;
      continue;
    }
    const afterSign = /^(.{2,}[-./,: –])(.*)$/su.exec(open);
    lines.push(afterSign ? afterSign[1]! : open);
    open = (afterSign ? afterSign[2]! : "") + sign;
  }
  return [...lines, open];
}

/** The words, cut with an ellipsis where they are too long for one line of this width. */
export function fitted(words: string, type: TypeSize, width: Millimetres): string {
  if (widthMm(words, type) <= width) return words;
  let short = words;
  while (short.length > 1 && widthMm(`${short}…`, type) > width) short = short.slice(0, -1);
  return `${short.trimEnd()}…`;
}

/** One line of type whose body is the line's height; x is where the anchor stands, y the top of the line. */
export function lineMark(
  words: string,
  type: TypeSize,
  x: Millimetres,
  y: Millimetres,
  options: { readonly anchor?: Anchor; readonly role?: Role } = {},
): Mark {
  const size = sizeMm(type);
  const baseline = y + (type.line - size) / 2 + ASCENT * size;
  const { points, weight } = type;
  return text(words, gridUnitsOf(x), gridUnitsOf(baseline), { points, weight, ...options });
}

const SHARES: Readonly<Record<Anchor, number>> = { start: 0, middle: 0.5, end: 1 };

/** Text broken into lines of this width. */
export function paragraph(words: string, type: TypeSize, width: Millimetres, anchor: Anchor = "start"): Piece {
  if (words.trim() === "") return { height: 0, at: () => [] };
  const lines = linesOf(words, type, width);
  const across = width * SHARES[anchor];
  return {
    height: lines.length * type.line,
    at: (x, y) => lines.map((line, i) => lineMark(line, type, x + across, y + i * type.line, { anchor })),
  };
}

/**
 * Text whose first words are bold. Broken as plain text, and as if all of it were bold only where the bold words would
 * reach too far.
 */
export function leadParagraph(lead: string, words: string, type: TypeSize, width: Millimetres): Piece {
  const bold: TypeSize = { ...type, weight: 700 };
  const cutAt = (weight: TypeSize): readonly Runs[] =>
    leadRuns(lead, linesOf(`${lead} ${words}`, weight, width), bold, type);
  const plain = cutAt(type);
  const lines = plain.every((line) => runsWidth(line) <= width) ? plain : cutAt(bold);
  return {
    height: lines.length * type.line,
    at: (x, y) => lines.flatMap((line, i) => runMarks(line, x, y + i * type.line, type.line)),
  };
}

/** Each line in its bold and its plain part. Blanks do not count: breaking may have taken some. */
function leadRuns(lead: string, lines: readonly string[], bold: TypeSize, plain: TypeSize): readonly Runs[] {
  let left = [...lead.replace(/\s+/g, "")].length;
  return lines.map((line) => {
    let at = 0;
    for (const sign of line) {
      if (left === 0) break;
      if (sign.trim() !== "") left--;
      at += sign.length;
    }
    return [
      [line.slice(0, at), bold],
      [line.slice(at), plain],
    ];
  });
}

/** Words of several sizes on one line and one baseline, from left to right. */
export type Runs = readonly (readonly [string, TypeSize])[];

/** Width of runs side by side. */
export function runsWidth(runs: Runs): Millimetres {
  return runs.reduce((sum, [words, type]) => sum + widthMm(words, type), 0);
}

/** Runs on one line; as high as the tallest of them. Not broken: the caller sees that they fit. */
export function runs(...parts: Runs): Piece {
  const height = Math.max(...parts.map(([, type]) => type.line));
  return { height, at: (x, y) => runMarks(parts, x, y, height) };
}

function runMarks(parts: Runs, x: Millimetres, y: Millimetres, height: Millimetres): readonly Mark[] {
  const tallest = parts.reduce((most, [, type]) => (type.points > most.points ? type : most), parts[0]![1]);
  const size = sizeMm(tallest);
  const baseline = y + (height - size) / 2 + ASCENT * size;
  const marks: Mark[] = [];
  let across = x;
  for (const [words, { points, weight }] of parts) {
    const start = words.length - words.trimStart().length;
    const shift = widthMm(words.slice(0, start), { points, weight, line: 0 });
    if (words.trim() !== "") {
      marks.push(text(words.trim(), gridUnitsOf(across + shift), gridUnitsOf(baseline), { points, weight }));
    }
    across += widthMm(words, { points, weight, line: 0 });
  }
  return marks;
}

/** A word, then words in bold that take further lines where they do not fit beside it. */
export function wordThen(word: string, small: TypeSize, name: string, type: TypeSize, width: Millimetres): Piece {
  const line: Runs = [
    [`${word} `, small],
    [name, type],
  ];
  if (runsWidth(line) <= width) return runs(...line);
  const first = paragraph(word, small, width);
  const rest = paragraph(name, type, width);
  return { height: first.height + rest.height, at: (x, y) => [...first.at(x, y), ...rest.at(x, y + first.height)] };
}
