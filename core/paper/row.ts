import type { ControlKey } from "../base/ids.ts";
import type { Millimetres, Volts } from "../base/units.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { isBySense, type Setting, type Step } from "../diagnose/step.ts";
import { inCell, outline, ruled, stroke, together } from "./cell.ts";
import { expectPiece } from "./expectCell.ts";
import { faceOf } from "./face.ts";
import { facePiece } from "./facePiece.ts";
import { readingPiece } from "./fields.ts";
import { type Block, type GridCell, glued, gridRow, roomIn } from "./grid.ts";
import { leadsPiece, placedLead } from "./leads.ts";
import { lineMark, paragraph, wordThen } from "./lines.ts";
import { notesCell } from "./notesCell.ts";
import { SHEET } from "./page.ts";
import { beside, type Piece, space, stack } from "./piece.ts";
import { setPiece, sweepSetPiece } from "./setCell.ts";
import { TYPE } from "./sizes.ts";
import { sweepPiece } from "./sweepCell.ts";

/** Widths of the columns of a checklist; together the width of the sheet. */
export const COLUMNS = { row: 14, probe: 61, set: 26, expect: 30, reading: 29, notes: 26 } as const satisfies Readonly<
  Record<string, Millimetres>
>;

const ROW: Millimetres = 24;
const SWEEP_ROW: Millimetres = 36;
/** A sweep higher than this goes on in a further row of the same number, so that every row fits a sheet. */
const MOST_SWEEP: Millimetres = 120;
const FACE_ROOM: Millimetres = 26;
const TICK: Millimetres = 6.5;

/** What all rows of a checklist are drawn with. */
export interface RowSetting {
  readonly circuit: Circuit;
  readonly restVolts: Volts;
  /** Controls that some row throws: every row says where they stand. */
  readonly matters: readonly ControlKey[];
  /** Cautions that already stand in the frame of the first sheet or on the bar of the place. */
  readonly told: ReadonlySet<string>;
}

/** The rows of one step: one, or several where a sweep has more positions than a sheet holds. */
export function rowsOf(setting: RowSetting, step: Step): readonly Block[] {
  const own = step.cautions.filter((caution) => !setting.told.has(caution));
  const rows = step.sweepOf === null ? [singleRow(setting, step)] : sweepRows(setting, step, step.settings, false);
  return rows.map((row) => sided(own.length === 0 ? row : glued(row, cautionStrip(own))));
}

function singleRow({ circuit, restVolts, matters }: RowSetting, step: Step): Block {
  const expect = step.settings[0]?.expect;
  const isByEye = isBySense(step.instrument) || step.lampTo === "black";
  const reading = readingPiece(isByEye ? "" : (expect?.unit ?? "V"), expect?.lamp != null);
  return gridRow(ROW, [
    numberCell(step.number, false),
    probeCell(circuit, step),
    rowCell("set", COLUMNS.set, setPiece(circuit, step, matters, roomIn(COLUMNS.set, 1))),
    rowCell("expect", COLUMNS.expect, expectPiece(step, restVolts, roomIn(COLUMNS.expect, 1))),
    { name: "reading", width: COLUMNS.reading, padX: 1, padY: 1, piece: reading },
    notesCell(step.why, COLUMNS.notes),
  ]);
}

/** A sweep in one row, or halved until every row is low enough. */
function sweepRows(setting: RowSetting, step: Step, settings: readonly Setting[], isMore: boolean): readonly Block[] {
  const row = sweepRow(setting, step, settings, isMore);
  if (row.height <= MOST_SWEEP || settings.length < 2) return [row];
  const half = Math.ceil(settings.length / 2);
  return [
    ...sweepRows(setting, step, settings.slice(0, half), isMore),
    ...sweepRows(setting, step, settings.slice(half), true),
  ];
}

function sweepRow({ circuit, matters }: RowSetting, step: Step, settings: readonly Setting[], isMore: boolean): Block {
  return gridRow(SWEEP_ROW, [
    numberCell(step.number, isMore),
    probeCell(circuit, step),
    rowCell("set", COLUMNS.set, sweepSetPiece(circuit, step, settings, matters, roomIn(COLUMNS.set, 1))),
    { name: "sweep", width: COLUMNS.expect + COLUMNS.reading, padX: 0, padY: 0, piece: sweepPiece(settings) },
    notesCell(step.why, COLUMNS.notes),
  ]);
}

/** A row's own cautions on a line across the sheet below it, so that they need not make its columns higher. */
export function cautionStrip(cautions: readonly string[]): Block {
  const left = COLUMNS.row + 1;
  const words = paragraph(WORDS.rowCaution(cautions.join(" ")), TYPE.warning, SHEET.width - left - 1.4);
  const height = words.height + 1.2;
  return {
    height,
    draw(top) {
      const box = { x: 0, y: top, width: SHEET.width, height };
      const rule = stroke("rule-dotted", COLUMNS.row, top, SHEET.width - 0.5, top);
      return together(ruled(rule), inCell("row caution", box, words.at(left, top + 0.6)));
    },
  };
}

/** A cell of a row in which words stand close to its edges. */
export function rowCell(name: string, width: Millimetres, piece: Piece): GridCell {
  return { name, width, piece, padX: 1, padY: 0.8 };
}

/** The row's number, what a sweep that goes on says below it, and the box to tick when it is done. */
export function numberCell(number: number, isMore: boolean, width: Millimetres = COLUMNS.row): GridCell {
  const room = width;
  const digits: Piece = {
    height: TYPE.rowNumber.line,
    at: (x, y) => [lineMark(String(number), TYPE.rowNumber, x + room / 2, y, { anchor: "middle" })],
  };
  const tick: Piece = {
    height: TICK,
    at: (x, y) => [outline("field", { x: x + (room - TICK) / 2, y, width: TICK, height: TICK })],
  };
  const more = isMore ? [paragraph(WORDS.more, TYPE.small, room, "middle")] : [];
  return { name: "row", width: room, padX: 0, padY: 0.6, piece: stack([digits, ...more, space(1.8), tick]) };
}

/** Where the leads go: the face with both pins marked and the words beside it; of a look or a sound the words alone. */
export function probeCell(circuit: Circuit, step: Step, width: Millimetres = COLUMNS.probe): GridCell {
  if (isBySense(step.instrument)) {
    const words = wordThen(WORDS.senseAt[step.instrument], TYPE.lead, step.point, TYPE.pin, width - 3);
    return { name: "probe", width, padX: 1.5, padY: 0.9, piece: words, middle: true };
  }
  const left = FACE_ROOM + 2;
  const face = facePiece(faceOf(circuit, placedLead(step)), step.point, step.black, FACE_ROOM - 1);
  const leads = leadsPiece(circuit, step, width - left - 0.8);
  const piece = beside(
    [
      { x: 1, piece: face },
      { x: left, piece: leads },
    ],
    "middle",
  );
  return { name: "probe", width, padX: 0, padY: 0.9, piece, middle: true };
}

/** A row with its sides and the line below it. */
export function sided(row: Block): Block {
  return {
    height: row.height,
    draw(top) {
      const bottom = top + row.height;
      const [left, right] = [0.175, SHEET.width - 0.175];
      return together(
        row.draw(top),
        ruled(
          stroke("place", left, top, left, bottom),
          stroke("place", right, top, right, bottom),
          stroke("rule", 0, bottom, SHEET.width, bottom),
        ),
      );
    },
  };
}
