import type { GridUnits } from "../base/units.ts";
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

/** Right, left, above and below, ever farther away. */
export function* around(part: SheetPart, lines: NameLines, from: GridUnits, to: GridUnits): Generator<NamePlace> {
  const { up, foot } = heights(lines);
  const step = Math.max(STEP, up / 3);
  for (let away = from; away <= to; away += step) yield* ring(part.shape.outline, { away, step, up, foot });
}

/** Places round an outline at one distance; each side is tried from its middle outwards. */
function* ring(
  outline: Bounds,
  { away, step, up, foot }: Readonly<Record<"away" | "step" | "up" | "foot", GridUnits>>,
): Generator<NamePlace> {
  const { left, top, right, bottom } = outline;
  const middleX = (left + right) / 2;
  const middleY = (top + bottom) / 2 + (up - foot) / 2;
  for (const shift of fromMiddle((bottom - top) / 2 + away, step)) {
    yield [{ x: right + away, y: middleY + shift }, "start"];
    yield [{ x: left - away, y: middleY + shift }, "end"];
  }
  for (const shift of fromMiddle((right - left) / 2 + away, step)) {
    const anchor = shift === 0 ? "middle" : shift < 0 ? "end" : "start";
    yield [{ x: middleX + shift, y: top - away - foot }, anchor];
    yield [{ x: middleX + shift, y: bottom + away + up }, anchor];
  }
}

function* fromMiddle(most: GridUnits, step: GridUnits): Generator<GridUnits> {
  yield 0;
  for (let shift = step; shift <= most; shift += step) {
    yield -shift;
    yield shift;
  }
}
