import type { Millimetres, Volts } from "../base/units.ts";
import { SHEET_WORDS } from "../base/words/sheet.ts";
import { STRAIGHT_WORDS as WORDS } from "../base/words/straight.ts";
import { frameMarks } from "../circuit/sheetFrame.ts";
import type { Mark } from "../drawing/mark.ts";
import { gridUnitsOf } from "../drawing/scale.ts";
import { outline, stroke } from "./cell.ts";
import { fitted, linesOf, widthMm } from "./lines.ts";
import { SHEET } from "./page.ts";
import type { TypeSize } from "./sizes.ts";
import { middleLine } from "./straightMarks.ts";
import { AT, FRAME, ROWS, TITLE_HEIGHT, STRAIGHT_TYPE as TYPE } from "./straightSize.ts";

/** What stands round the rows of a branch, the same on all its sheets. */
export interface StraightFacts {
  readonly title: string;
  readonly position: readonly string[];
  readonly vehicle: string;
  readonly circuit: string;
  readonly page: string;
  readonly branch: string;
  readonly volts: Volts;
  readonly amps: string;
  /** Over the right side; empty where no fault is planted. */
  readonly fault: string;
}

/** Which sheet this is, and the code of what all of them show. */
export interface StraightNumber {
  readonly sheet: number;
  readonly sheets: number;
  readonly code: string;
}

/** Frame, title, position banner, column titles and title block. */
export function straightFrame(facts: StraightFacts, number: StraightNumber): readonly Mark[] {
  const grid = (mm: Millimetres) => gridUnitsOf(mm);
  const bounds = (left: Millimetres, top: Millimetres, right: Millimetres, bottom: Millimetres) => ({
    left: grid(left),
    top: grid(top),
    right: grid(right),
    bottom: grid(bottom),
  });
  const frame = bounds(FRAME.left, FRAME.top, FRAME.right, FRAME.bottom);
  const area = {
    width: grid(SHEET.width),
    height: grid(SHEET.height),
    outer: bounds(0.2, 0.2, SHEET.width - 0.2, SHEET.height - 0.2),
    frame,
    columns: 4,
    rows: 6,
    banner: frame,
    legend: frame,
    title: frame,
    drawing: frame,
  };
  const title = number.sheet === 1 ? facts.title : WORDS.continued(facts.title);
  return [
    ...frameMarks(area, 1),
    middleLine(fitted(title, TYPE.title, AT.right - AT.where), TYPE.title, AT.where, 10.4),
    ...bannerMarks(facts.position),
    ...columnMarks(facts.fault),
    ...titleBlock(facts, number),
  ];
}

const BANNER = { x: AT.where, y: 15, width: AT.right - AT.where, height: 8.5 } as const;
const BANNER_SIZES = [12, 10.5, 9.5, 8.5, 7.5] as const;

function bannerMarks(position: readonly string[]): readonly Mark[] {
  const words = position.join(" · ");
  const lead = widthMm(SHEET_WORDS.positionDrawn, TYPE.bannerLead);
  const x = BANNER.x + 2.4;
  const left = x + lead + 3;
  const room = BANNER.x + BANNER.width - 2 - left;
  const sizes = BANNER_SIZES.map((points): TypeSize => ({ points, weight: 600, line: points * 0.37 }));
  const type = sizes.find((size) => linesOf(words, size, room).length <= (size.points > 9 ? 1 : 2)) ?? sizes.at(-1)!;
  const lines = linesOf(words, type, room).slice(0, 2);
  const middle = BANNER.y + BANNER.height / 2;
  const first = middle - ((lines.length - 1) * type.line) / 2;
  return [
    outline("field", BANNER),
    middleLine(SHEET_WORDS.positionDrawn, TYPE.bannerLead, x, middle),
    ...lines.map((line, index) => middleLine(line, type, left, first + index * type.line)),
  ];
}

function columnMarks(fault: string): readonly Mark[] {
  const y = 27.2;
  const titles: readonly (readonly [Millimetres, string])[] = [
    [AT.where, WORDS.columns.where],
    [AT.part, WORDS.columns.part],
    [AT.line - 4, WORDS.columns.branch],
    [AT.what, WORDS.columns.what],
    [AT.glyph - 6, WORDS.columns.volts],
  ];
  const written: typeof titles = [
    [AT.read, WORDS.columns.read],
    [AT.zone - 2, WORDS.columns.zone],
  ];
  const room = AT.right - AT.divider - 2.4;
  const said = fault === "" ? [] : linesOf(fault, TYPE.column, room).slice(0, 2);
  const first = y - ((said.length - 1) * TYPE.column.line) / 2;
  return [
    ...[...titles, ...(fault === "" ? written : [])].map(([x, words]) => middleLine(words, TYPE.column, x, y)),
    ...said.map((line, index) => middleLine(line, TYPE.column, AT.divider + 2.4, first + index * TYPE.column.line)),
    stroke("rule", AT.where, ROWS.top - 1, AT.right, ROWS.top - 1),
    ...(fault === "" ? [] : [stroke("rule-dotted", AT.divider, ROWS.top - 6, AT.divider, ROWS.bottom)]),
  ];
}

function titleBlock(facts: StraightFacts, { sheet, sheets, code }: StraightNumber): readonly Mark[] {
  const top = FRAME.bottom - TITLE_HEIGHT;
  const middle = FRAME.bottom - TITLE_HEIGHT / 2;
  const [second, third, fourth] = [77.8, 135, 159.8] as const;
  const upper: readonly Field[] = [
    [FRAME.left, second, SHEET_WORDS.vehicle, facts.vehicle],
    [second, third, SHEET_WORDS.circuit, facts.circuit],
    [third, fourth, WORDS.page, facts.page],
    [fourth, FRAME.right, SHEET_WORDS.sheet, `${sheet} ${SHEET_WORDS.of} ${sheets}`],
  ];
  const lower: readonly Field[] = [
    [FRAME.left, second, WORDS.branch, facts.branch],
    [second, third, SHEET_WORDS.voltsFor, WORDS.voltsFor(facts.volts.toFixed(1), facts.amps)],
    [third, fourth, SHEET_WORDS.code, code],
    [fourth, FRAME.right, SHEET_WORDS.date, ""],
  ];
  return [
    stroke("frame-heavy", FRAME.left, top, FRAME.right, top),
    stroke("rule", FRAME.left, middle, FRAME.right, middle),
    ...[second, third, fourth].map((x) => stroke("rule", x, top, x, FRAME.bottom)),
    ...upper.flatMap((field) => fieldMarks(field, top)),
    ...lower.flatMap((field) => fieldMarks(field, middle)),
  ];
}

/** Sizes of a value, the largest that fits. */
const VALUE_SIZES: readonly TypeSize[] = [TYPE.value, { ...TYPE.value, points: 9 }, { ...TYPE.value, points: 8 }];

type Field = readonly [left: Millimetres, right: Millimetres, label: string, value: string];

function fieldMarks([left, right, label, value]: Field, top: Millimetres): readonly Mark[] {
  const room = right - left - 4;
  const type = VALUE_SIZES.find((size) => widthMm(value, size) <= room) ?? VALUE_SIZES.at(-1)!;
  return [
    middleLine(label, TYPE.label, left + 2, top + 2.6),
    middleLine(fitted(value, type, room), type, left + 2, top + 7),
  ];
}
