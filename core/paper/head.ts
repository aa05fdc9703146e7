import type { Millimetres, Volts } from "../base/units.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import { outline, ruled, stroke, together } from "./cell.ts";
import { type Block, type GridCell, glued, gridRow, roomIn } from "./grid.ts";
import { lineMark, paragraph, runs, widthMm } from "./lines.ts";
import { type Facts, SHEET, type SheetNumber } from "./page.ts";
import { type Piece, stack } from "./piece.ts";
import { voltsText } from "./range.ts";
import { sizeMm, TYPE, type TypeSize } from "./sizes.ts";

/** Below this share of nominal volts a battery is charged before anything is read: 12.2 V of 12 V (common practice, no source). */
const CHARGE_BELOW = 12.2 / 12;

/** Where the columns of the head begin. */
const MIDDLE: Millimetres = 72;
const RIGHT: Millimetres = 133.5;
const LAST: Millimetres = 160.5;

/** The head of the first sheet, 37 mm high unless a name needs more. */
export function firstHead(facts: Facts, number: SheetNumber): Block {
  const cell = (name: string, width: Millimetres, piece: Piece, middle = false): GridCell => ({
    name,
    width,
    piece,
    middle,
  });
  const named = (name: string, width: Millimetres, words: string, type: TypeSize = TYPE.headValue): GridCell =>
    cell(name, width, field(name, words, roomIn(width), type));
  const title = paragraph(facts.title, TYPE.title, roomIn(RIGHT));
  const [means, meant] = facts.meaning;
  return framed([
    gridRow(10, [
      cell("title", RIGHT, title, true),
      named(WORDS.code, LAST - RIGHT, number.code, TYPE.sheetNumber),
      named(WORDS.sheet, SHEET.width - LAST, WORDS.sheetOf(number.sheet, number.sheets), TYPE.sheetNumber),
    ]),
    gridRow(8.5, [
      named(WORDS.vehicle, MIDDLE, facts.vehicle),
      named(WORDS.complaint, SHEET.width - MIDDLE, facts.complaint),
    ]),
    gridRow(8.5, [
      named(WORDS.circuit, MIDDLE, facts.circuit),
      named(WORDS.date, RIGHT - MIDDLE, facts.date),
      named(WORDS.technician, SHEET.width - RIGHT, ""),
    ]),
    gridRow(10, [
      cell(WORDS.batteryAtRest, MIDDLE, batteryField(25, 7.6, 3), true),
      named(
        WORDS.rangesFor(voltsText(facts.restVolts)),
        RIGHT - MIDDLE,
        chargeWords(facts.nominalVolts),
        TYPE.headText,
      ),
      named(means, SHEET.width - RIGHT, meant),
    ]),
  ]);
}

/** The head of every later sheet, 15.5 mm high unless a name needs more. */
export function laterHead(facts: Facts, number: SheetNumber): Block {
  const [middle, right] = [100, 161.5];
  const [complaint, battery] = [60, RIGHT];
  const cell = (name: string, width: Millimetres, piece: Piece): GridCell => ({
    name,
    width,
    piece,
    middle: true,
    padY: 0.3,
  });
  const value = (name: string, width: Millimetres, words: string): GridCell =>
    cell(name, width, paragraph(words, TYPE.laterValue, roomIn(width)));
  return framed([
    gridRow(7.5, [
      cell("title", middle, paragraph(facts.title, TYPE.laterTitle, roomIn(middle))),
      cell(WORDS.circuit, right - middle, laterCircuit(facts, number.code, roomIn(right - middle))),
      cell(
        WORDS.sheet,
        SHEET.width - right,
        paragraph(WORDS.sheetOf(number.sheet, number.sheets), TYPE.laterNumber, roomIn(SHEET.width - right)),
      ),
    ]),
    gridRow(8, [
      value(WORDS.vehicle, complaint, facts.vehicle),
      value(WORDS.complaint, battery - complaint, facts.complaint),
      cell(WORDS.batteryAtRest, SHEET.width - battery, batteryField(20, 5.8, 1.2)),
    ]),
  ]);
}

function chargeWords(nominalVolts: Volts): string {
  return WORDS.chargers(voltsText(CHARGE_BELOW * nominalVolts));
}

/** Rows of a head within its frame, fine lines between them. */
function framed(rows: readonly Block[]): Block {
  const all = glued(...rows);
  return {
    height: all.height,
    draw(top) {
      let y = top;
      const edges = rows.slice(0, -1).map((row) => {
        y += row.height;
        return stroke("rule-fine", 0, y, SHEET.width, y);
      });
      const frame = outline("table", { x: 0, y: top, width: SHEET.width, height: all.height });
      return together(all.draw(top), ruled(...edges, frame));
    },
  };
}

/** The name of a field in small type and what stands in it. */
function field(name: string, words: string, room: Millimetres, type: TypeSize): Piece {
  return stack([paragraph(name, TYPE.small, room), paragraph(words, type, room)]);
}

/** "Battery at rest", the box to write in, and its unit. */
function batteryField(width: Millimetres, height: Millimetres, gap: Millimetres): Piece {
  const words = TYPE.headValue;
  const left = widthMm(WORDS.batteryAtRest, words) + gap;
  return {
    height,
    at(x, y) {
      const line = y + (height - words.line) / 2;
      return [
        lineMark(WORDS.batteryAtRest, words, x, line),
        outline("place", { x: x + left, y, width, height }),
        lineMark("V", words, x + left + width + Math.min(gap, 2), line),
      ];
    },
  };
}

function laterCircuit(facts: Facts, code: string, room: Millimetres): Piece {
  const name = paragraph(facts.circuit, TYPE.laterValue, room);
  const small = TYPE.small;
  const line = runs(
    [`${WORDS.laterCode} `, small],
    [code, TYPE.smallBold],
    [`   ${WORDS.laterDate} ${facts.date}`, small],
  );
  const left = widthMm(`${WORDS.laterCode} ${code}   ${WORDS.laterDate} `, TYPE.smallBold);
  const rule: Piece = {
    height: line.height,
    at: (x, y) => [
      ...line.at(x, y),
      ...(facts.date === ""
        ? [stroke("rule-fine", x + left, y + sizeMm(small), x + left + 22, y + sizeMm(small))]
        : []),
    ],
  };
  return stack([name, rule]);
}
