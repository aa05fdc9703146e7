import type { PartId } from "../../base/ids.ts";
import type { Outcome } from "../../base/outcome.ts";
import type { GridUnits } from "../../base/units.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { Bounds } from "../../drawing/measure.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf, nameOfAll } from "../editOf.ts";
import { movingAll, together } from "../together.ts";

/** Where parts come to stand in one line: an edge of the box around them, or its middle across or down. */
export type Line = "left" | "right" | "top" | "bottom" | "middle-across" | "middle-down";

/** How far an outline goes to lie on an edge of the box: to the right, and down. */
const TO_EDGE: Readonly<Record<string, (box: Bounds, outline: Bounds) => readonly [GridUnits, GridUnits]>> = {
  left: (box, { left }) => [box.left - left, 0],
  right: (box, { right }) => [box.right - right, 0],
  top: (box, { top }) => [0, box.top - top],
  bottom: (box, { bottom }) => [0, box.bottom - bottom],
};

/** How far each outline goes to lie on the line. */
function shiftsTo(line: Line, box: Bounds, outlines: readonly Bounds[]): readonly (readonly [GridUnits, GridUnits])[] {
  const toEdge = TO_EDGE[line];
  if (toEdge) return outlines.map((outline) => toEdge(box, outline));
  const isAcross = line === "middle-across";
  const twice = ({ left, top, right, bottom }: Bounds): number => (isAcross ? left + right : top + bottom);
  const middles = outlines.map(twice);
  // Of even and odd width, two cannot have one middle: half a grid unit apart they are in line.
  const isInLine = Math.max(...middles) - Math.min(...middles) <= 1;
  return middles.map((middle) => {
    const shift = isInLine ? 0 : Math.floor((twice(box) - middle) / 2);
    return isAcross ? [shift, 0] : [0, shift];
  });
}

/**
 * Puts parts in one line; their wires follow. `middle-across` brings their middles over each other, `middle-down` side by
 * side, to half a grid unit. Refuses `parts-few` under two, `part-unknown`, `not-placed`, `pages-several`, `off-the-page`,
 * `part-hidden` and `already-so`.
 */
export function alignThings(bench: Bench, ids: readonly PartId[], line: Line): Outcome<Edit> {
  const { circuit } = bench;
  const found = together(circuit, ids, 2);
  if (!found.ok) return found;
  const { parts, box } = found.value;
  const shifts = shiftsTo(
    line,
    box,
    parts.map(({ outline }) => outline),
  );
  const moves = parts.flatMap(({ part, place }, index) => {
    const [dx, dy] = shifts[index]!;
    if (dx === 0 && dy === 0) return [];
    return [{ part, from: place, to: { ...place, x: place.x + dx, y: place.y + dy } }];
  });
  const name = nameOfAll(circuit, ids);
  if (moves.length === 0) return alreadySo(name);
  const changes = movingAll(circuit, moves);
  return changes.ok ? editOf(bench, EDIT_NAMES.alignThings(name), changes.value) : changes;
}
