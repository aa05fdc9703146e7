import { WIRE_STATES, type WireState } from "../base/states.ts";
import type { Millimetres } from "../base/units.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import type { PositionTable } from "../diagnose/positionTable.ts";
import { glyphMarks } from "../drawing/glyph.ts";
import type { Mark } from "../drawing/mark.ts";
import { gridUnitsOf } from "../drawing/scale.ts";
import { inCell } from "./cell.ts";
import type { Block } from "./grid.ts";
import { LAMP_SIGN, lampMarks } from "./lampSign.ts";
import { lineMark, paragraph, widthMm } from "./lines.ts";
import { SHEET } from "./page.ts";
import { type Piece, stack } from "./piece.ts";
import { TYPE } from "./sizes.ts";

const ABOVE: Millimetres = 1.6;
const SIGN_ROOM: Millimetres = 5.6;
const AFTER_WORD: Millimetres = 8;
const LOOKS = ["bright", "dim", "dark"] as const;

interface Entry {
  readonly words: string;
  at(x: Millimetres, y: Millimetres): readonly Mark[];
}

/** Under the table of every sheet: what its signs mean, and which positions read the same as a column. */
export function tableEnd(table: PositionTable, notes: readonly string[]): Block {
  const used = new Set(table.rows.flatMap(({ cells }) => cells.map(({ state }) => state)));
  const entries = [...WIRE_STATES.filter((state) => used.has(state)).map(stateEntry), ...LOOKS.map(lampEntry)];
  const words = stack(
    [
      legendPiece(entries),
      ...notes.map((note) => paragraph(note, TYPE.body, SHEET.width)),
      paragraph(WORDS.lampToPosts, TYPE.body, SHEET.width),
    ],
    0.6,
  );
  return {
    height: ABOVE + words.height,
    draw: (top) =>
      inCell("legend", { x: 0, y: top + ABOVE, width: SHEET.width, height: words.height }, words.at(0, top + ABOVE)),
  };
}

function stateEntry(state: WireState): Entry {
  return {
    words: WORDS.legend[state],
    at: (x, y) => glyphMarks(state, { x: gridUnitsOf(x), y: gridUnitsOf(y) }),
  };
}

function lampEntry(looks: (typeof LOOKS)[number]): Entry {
  return { words: WORDS.legendLamps[looks], at: (x, y) => lampMarks(looks, x, y) };
}

/** Signs with their words, as many on a line as fit. */
function legendPiece(entries: readonly Entry[]): Piece {
  const type = TYPE.body;
  const lines: { x: Millimetres; entry: Entry }[][] = [[]];
  let x = 0;
  for (const entry of entries) {
    const width = SIGN_ROOM + widthMm(entry.words, type);
    if (x > 0 && x + width > SHEET.width) {
      lines.push([]);
      x = 0;
    }
    lines.at(-1)!.push({ x, entry });
    x += width + AFTER_WORD;
  }
  const middle = LAMP_SIGN / 2;
  return stack(
    lines.map((line) => ({
      height: LAMP_SIGN,
      at: (left, y) =>
        line.flatMap(({ x, entry }) => [
          ...entry.at(left + x + SIGN_ROOM / 2, y + middle),
          lineMark(entry.words, type, left + x + SIGN_ROOM, y + middle - type.line / 2),
        ]),
    })),
  );
}
