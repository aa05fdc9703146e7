import type { Millimetres } from "../base/units.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import type { Circuit } from "../circuit/circuit.ts";
import type { PositionCell, PositionRow } from "../diagnose/positionTable.ts";
import { glyphMarks } from "../drawing/glyph.ts";
import type { Mark } from "../drawing/mark.ts";
import { gridUnitsOf } from "../drawing/scale.ts";
import { outline } from "./cell.ts";
import { colourPiece } from "./colourSample.ts";
import type { GridCell } from "./grid.ts";
import { LAMP_SIGN, lampMarks } from "./lampSign.ts";
import { lineMark, paragraph, type Runs, runs, runsWidth } from "./lines.ts";
import { type Piece, space, stack } from "./piece.ts";
import { tableVolts } from "./range.ts";
import { TYPE, type TypeSize } from "./sizes.ts";

/** Where the table begins, so that it stands in the middle of the sheet. */
export const TABLE_LEFT: Millimetres = 0.3;

/** Widths of the table: the column of pins, and one for each position. */
export const TABLE_COLUMNS = { pin: 30.4, position: 15.5 } as const satisfies Readonly<Record<string, Millimetres>>;

const FIELD: { readonly width: Millimetres; readonly height: Millimetres } = { width: 13.8, height: 11 };
const GLYPH_MIDDLE: Millimetres = 2;
const VOLTS_AT: Millimetres = 4;
const VOLTS_LINE: Millimetres = 4.8;
/** Middles of the two lamps, and where the sign before each stands. */
const LAMPS: readonly (readonly [sign: Millimetres, lamp: Millimetres])[] = [
  [1.3, 4.5],
  [8.5, 11.9],
];
const PIN_PAD: Millimetres = 1.6;

/** What one pin shows in one position: state and volts, a lamp to either post, and the field for the own reading. */
export function positionCell(cell: PositionCell, plugged: boolean): GridCell {
  const width = TABLE_COLUMNS.position;
  const left = (width - FIELD.width) / 2;
  const field: Piece = {
    height: FIELD.height,
    at: (x, y) => [outline("field", { x: x + left, y, width: FIELD.width, height: FIELD.height })],
  };
  const piece = stack([voltsPiece(cell, plugged), space(0.5), lampsPiece(cell), space(0.5), field]);
  return { name: "position", width, padX: 0, padY: 0.7, piece };
}

function voltsPiece({ state, volts }: PositionCell, plugged: boolean): Piece {
  const [words, type] = wordsOf(state === "floating" ? null : volts, state === "floating", plugged);
  return {
    height: VOLTS_LINE,
    at(x, y) {
      const middle = y + VOLTS_LINE / 2;
      const glyph = glyphMarks(state, { x: gridUnitsOf(x + GLYPH_MIDDLE), y: gridUnitsOf(middle) });
      return [...glyph, lineMark(words, type, x + VOLTS_AT, middle - type.line / 2)];
    },
  };
}

/** A drifting pin is never a number: it reads like ground. */
function wordsOf(volts: number | null, isFloating: boolean, plugged: boolean): readonly [string, TypeSize] {
  if (volts !== null) return [tableVolts(volts), plugged ? TYPE.tableVolts : TYPE.tableVoltsLight];
  return [isFloating ? WORDS.drifts : WORDS.varies, plugged ? TYPE.tableDrifts : TYPE.tableDriftsLight];
}

function lampsPiece({ lampToMinus, lampToPlus }: PositionCell): Piece {
  const looks = [lampToMinus, lampToPlus];
  const signs = ["−", "+"];
  return {
    height: LAMP_SIGN,
    at: (x, y) =>
      LAMPS.flatMap(([sign, lamp], i): readonly Mark[] => {
        const middle = y + LAMP_SIGN / 2;
        const type = TYPE.tableSign;
        const mark = lineMark(signs[i]!, type, x + sign, middle - type.line / 2, { anchor: "middle" });
        return [mark, ...lampMarks(looks[i]!, x + lamp, middle)];
      }),
  };
}

/** The first cell of a row: the pin, where its wire leads, its colour. */
export function pinCell(circuit: Circuit, row: PositionRow): GridCell {
  const width = TABLE_COLUMNS.pin;
  const room = width - PIN_PAD - 0.8;
  const line: Runs = [
    [row.pin, TYPE.tablePin],
    [` ${row.leadsTo}`, TYPE.tableLead],
  ];
  const pin =
    row.leadsTo === "" || runsWidth(line) > room
      ? stack([paragraph(row.pin, TYPE.tablePin, room), paragraph(row.leadsTo, TYPE.tableLead, room)])
      : runs(...line);
  const piece = stack([pin, colourPiece(circuit, row.colour, room)], 0.6);
  return { name: "pin", width, padX: PIN_PAD, padY: 0.8, middle: true, piece };
}
