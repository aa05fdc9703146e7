import type { PointId } from "../base/ids.ts";
import type { GridUnits } from "../base/units.ts";
import type { Circuit, Wire } from "../circuit/circuit.ts";
import { boxesOn } from "../circuit/overlap.ts";
import { overlaps } from "../circuit/sheetRoom.ts";
import type { Spot } from "../drawing/mark.ts";
import type { Bounds } from "../drawing/measure.ts";
import { distanceToPath, pathLength, spotAlong } from "../drawing/path.ts";
import type { WirePath } from "./wirePath.ts";

/** From the dot of a splice to where a wire that leaves a leg may turn: half the splice and one grid unit. */
const REACH: GridUnits = 3;
/** Room from the dot of a splice to an end of the wire: that, and one grid unit for the terminal there. */
const CLEAR: GridUnits = 4;
/** What is in the way of a splice counts as so many grid units that it could be moved along the wire instead. */
const IN_THE_WAY = { end: 10, corner: 8, part: 20, wire: 6 } as const;
/** Lines nearer than this lie on each other. */
const SAME: GridUnits = 0.25;

/**
 * Where along a wire that was met there a splice is best put in: near, and clear of its ends and corners, of parts, and of
 * other wires. In grid units from its first end.
 */
export function cutPlace(circuit: Circuit, path: WirePath, met: GridUnits): GridUnits {
  const parts = boxesOn(circuit, path.page.id);
  const turns = path.corners.slice(1, -1).map((_, index) => pathLength(path.corners.slice(0, index + 2)));
  const costAt = (along: GridUnits): number => {
    const square = squareRound(spotAlong(path.corners, along).at);
    const ends = [along, path.length - along].filter((room) => room < CLEAR).length;
    const corners = turns.filter((turn) => turn !== along && Math.abs(turn - along) < REACH).length;
    const covered = parts.filter(({ box }) => overlaps(square, box)).length;
    const crossed = path.others.filter(({ corners: spots }) => runsThrough(square, spots)).length;
    const { end, corner, part, wire } = IN_THE_WAY;
    return Math.abs(along - met) + end * ends + corner * corners + part * covered + wire * crossed;
  };
  const places = Array.from({ length: Math.floor(path.length) + 1 }, (_, along) => along);
  const costs = places.map(costAt);
  return costs.indexOf(Math.min(...costs));
}

/**
 * The end that a wire shares with another one which lies on the same line where it was met: whatever joins them there joins
 * them at that end. Null where the wire lies there alone.
 */
export function sharedEnd({ from, to }: Wire, path: WirePath, met: Spot): PointId | null {
  for (const { wire, corners } of path.others) {
    const end = [from, to].find((each) => each === wire.from || each === wire.to);
    if (end !== undefined && distanceToPath(corners, met) < SAME) return end;
  }
  return null;
}

function squareRound({ x, y }: Spot): Bounds {
  return { left: x - REACH, top: y - REACH, right: x + REACH, bottom: y + REACH };
}

/** Whether a run of level and upright lines passes through the square; along its edge it does not. */
function runsThrough(square: Bounds, spots: readonly Spot[]): boolean {
  return spots.some((spot, index) => {
    const from = spots[index - 1];
    if (!from) return false;
    const [left, right] = [Math.min(from.x, spot.x), Math.max(from.x, spot.x)];
    const [top, bottom] = [Math.min(from.y, spot.y), Math.max(from.y, spot.y)];
    return left < square.right && right > square.left && top < square.bottom && bottom > square.top;
  });
}
