import type { WireState } from "../base/states.ts";
import type { Millimetres } from "../base/units.ts";
import { chevronMarks, glyphMarks } from "../drawing/glyph.ts";
import type { Mark, Role, Spot } from "../drawing/mark.ts";
import { gridUnitsOf } from "../drawing/scale.ts";
import { stroke } from "./cell.ts";
import { lineMark } from "./lines.ts";
import type { TypeSize } from "./sizes.ts";

/** A piece of the line of a branch in its state. */
export function stateLine(state: WireState, x: Millimetres, from: Millimetres, to: Millimetres): readonly Mark[] {
  return to - from < 0.05 ? [] : [stroke(`wire-${state}` as Role, x, from, x, to)];
}

/** The glyph of a state with its middle at x, y. */
export function glyphAt(state: WireState, x: Millimetres, y: Millimetres): readonly Mark[] {
  return glyphMarks(state, { x: gridUnitsOf(x), y: gridUnitsOf(y) });
}

/** The chevron of current down the line. */
export function chevronAt(state: WireState, x: Millimetres, y: Millimetres): readonly Mark[] {
  return chevronMarks({ x: gridUnitsOf(x), y: gridUnitsOf(y) }, 90, state);
}

/** Marks moved by x, y millimetres. */
export function shifted(marks: readonly Mark[], x: Millimetres, y: Millimetres): readonly Mark[] {
  const [dx, dy] = [gridUnitsOf(x), gridUnitsOf(y)];
  return marks.map((mark): Mark => {
    if (mark.mark === "line") return { ...mark, spots: mark.spots.map((spot) => ({ x: spot.x + dx, y: spot.y + dy })) };
    return { ...mark, at: { x: mark.at.x + dx, y: mark.at.y + dy } };
  });
}

/** Marks grown about 0, 0 by this factor. */
export function grown(marks: readonly Mark[], factor: number): readonly Mark[] {
  const spot = ({ x, y }: Spot): Spot => ({ x: x * factor, y: y * factor });
  return marks.map((mark): Mark => {
    if (mark.mark === "line") return { ...mark, spots: mark.spots.map(spot) };
    if (mark.mark === "circle" || mark.mark === "arc")
      return { ...mark, at: spot(mark.at), radius: mark.radius * factor };
    if (mark.mark === "text") return { ...mark, at: spot(mark.at) };
    return { ...mark, at: spot(mark.at), width: mark.width * factor, height: mark.height * factor };
  });
}

/** A line of type with its middle on y. */
export function middleLine(
  words: string,
  type: TypeSize,
  x: Millimetres,
  y: Millimetres,
  anchor: "start" | "middle" | "end" = "start",
): Mark {
  return lineMark(words, type, x, y - type.line / 2, { anchor });
}
