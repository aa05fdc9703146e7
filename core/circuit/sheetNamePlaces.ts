import type { GridUnits } from "../base/units.ts";
import type { Anchor } from "../drawing/mark.ts";
import type { Bounds } from "../drawing/measure.ts";
import type { NameLines, NamePlace } from "./sheetNameLines.ts";
import type { SheetPart } from "./sheetSetup.ts";
import { depth, lead, rise } from "./sheetType.ts";

/** From a part to its name. */
export const NAME_GAP: GridUnits = 0.6;
/** Height of a name above its first baseline, from there to its last, and below its first down to its foot. */
function heights(lines: NameLines) {
  const up = rise(lines[0]![0]!.type.points);
  const below = lines.slice(1).reduce((sum, line) => sum + lead(Math.max(...line.map(({ type }) => type.points))), 0);
  return { up, below, foot: below + depth(lines.at(-1)![0]!.type.points) };
}

/**
 * Where the symbol wants its name: beside its middle, above or below. A load that lies has it below, where the row of
 * loads has its names.
 */
export function* homes(part: SheetPart, lines: NameLines): Generator<NamePlace> {
  const { outline, nameAt } = part.shape;
  const { up, below } = heights(lines);
  const { x, y, anchor } = nameAt;
  const isAbove = y <= outline.top;
  const isBelow = y >= outline.bottom;
  if (isAbove && anchor === "middle" && part.kind.role === "load")
    yield [{ x, y: outline.bottom + NAME_GAP + up }, anchor];
  yield [{ x, y: isAbove ? y - below : isBelow ? y : y - below / 2 }, anchor];
  yield [nameAt, anchor];
}

/** In the body of a part that has one, from its foot up. */
export function* inside(part: SheetPart, lines: NameLines): Generator<NamePlace> {
  const { outline, marks } = part.shape;
  if (!marks.some((mark) => mark.mark === "box" && mark.role === "body")) return;
  const { up, foot } = heights(lines);
  const x = (outline.left + outline.right) / 2;
  for (let y = outline.bottom - foot - 0.4; y >= outline.top + up + 0.4; y -= 0.25) yield [{ x, y }, "middle"];
}

/** Places are tried so far apart, or by a third of the height of the first line where words are as large as that on a small sheet. */
const STEP: GridUnits = 1;

/** All places round an outline at one distance. */
export interface Round {
  readonly outline: Bounds;
  readonly away: GridUnits;
  readonly step: GridUnits;
  /** Height of the words above their first baseline, and below it. */
  readonly up: GridUnits;
  readonly foot: GridUnits;
}

/** Round a part, ever farther away. */
export function* rounds(part: SheetPart, lines: NameLines, from: GridUnits, to: GridUnits): Generator<Round> {
  const { up, foot } = heights(lines);
  const step = Math.max(STEP, up / 3);
  for (let away = from; away <= to; away += step) yield { outline: part.shape.outline, away, step, up, foot };
}

/** Says whether words may stand with their first baseline here. */
export type WillDo = (x: GridUnits, y: GridUnits, anchor: Anchor) => boolean;

/**
 * Tries the places of a round, right, left, above and below, each side from its middle outwards; true as soon as one will
 * do. No place is made an object of: there are many, and most will not do.
 */
export function someOnRound({ outline, away, step, up, foot }: Round, willDo: WillDo): boolean {
  const { left, top, right, bottom } = outline;
  const middleX = (left + right) / 2;
  const middleY = (top + bottom) / 2 + (up - foot) / 2;
  const beside = (shift: GridUnits) =>
    willDo(right + away, middleY + shift, "start") || willDo(left - away, middleY + shift, "end");
  if (beside(0)) return true;
  for (let shift = step; shift <= (bottom - top) / 2 + away; shift += step) {
    if (beside(-shift) || beside(shift)) return true;
  }
  const over = (shift: GridUnits, anchor: Anchor) =>
    willDo(middleX + shift, top - away - foot, anchor) || willDo(middleX + shift, bottom + away + up, anchor);
  if (over(0, "middle")) return true;
  for (let shift = step; shift <= (right - left) / 2 + away; shift += step) {
    if (over(-shift, "end") || over(shift, "start")) return true;
  }
  return false;
}
