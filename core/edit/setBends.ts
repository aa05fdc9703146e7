import type { PointId } from "../base/ids.ts";
import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { GridUnits } from "../base/units.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { straightened } from "../circuit/routeBends.ts";
import type { Spot } from "../drawing/mark.ts";
import { gridUnitsOf } from "../drawing/scale.ts";
import { pageWith } from "./wireEnds.ts";

/** Bends that a person sets on a wire, in grid units, from its first end to its second. */
export type Bends = readonly (readonly [GridUnits, GridUnits])[];

/** Most bends of a wire, and how far off the origin a grid unit may lie, as a circuit file takes them. */
const MOST_BENDS = 400;
const MOST_GRID: GridUnits = 10_000;
/** What a wire keeps of its straight way out of a terminal when its end piece is moved. */
const STUB: GridUnits = 2;

/**
 * Bends on whole grid units, none twice in a row, for a wire between these points. Refuses `bends-many`, and
 * `bend-off-page` where one lies off the page that the wire is on.
 */
export function bendsOf(circuit: Circuit, ends: readonly [PointId, PointId], typed: Bends): Outcome<Bends> {
  if (typed.length > MOST_BENDS) return refuse("bends-many", { most: MOST_BENDS, count: typed.length });
  const page = pageWith(circuit, ends);
  const right = page ? gridUnitsOf(page.widthMm) : MOST_GRID;
  const bottom = page ? gridUnitsOf(page.heightMm) : MOST_GRID;
  const snapped = typed.map(([x, y]) => [Math.round(x), Math.round(y)] as const);
  const off = snapped.find(([x, y]) => !(x >= 0 && y >= 0 && x <= right && y <= bottom));
  if (off) return refuse("bend-off-page", { x: off[0], y: off[1] });
  return ok(snapped.filter(([x, y], index) => index === 0 || snapped[index - 1]!.join() !== `${x},${y}`));
}

// ---------------------------------------------------------------- dragging a right-angle path

/**
 * The bends of a right-angle path once its segment `index`, counted from 0 at the first end, has moved sideways by so many
 * grid units: down or to the right where positive. Both ends stay; an end piece leaves a stub at its terminal.
 */
export function segmentMoved(path: readonly Spot[], index: number, by: GridUnits): Bends {
  const [before, from, to, after] = [path.slice(0, index), path[index], path[index + 1], path.slice(index + 2)];
  if (!from || !to) return inner(path);
  const isLevel = from.y === to.y;
  const shifted = ({ x, y }: Spot): Spot => (isLevel ? { x, y: y + by } : { x: x + by, y });
  const stays = before.length === 0 ? [from] : [];
  const ends = after.length === 0 ? [to] : [];
  const pieces = stays.length + ends.length + 1;
  const start = stays.length > 0 ? towards(from, to, pieces) : from;
  const end = ends.length > 0 ? towards(to, from, pieces) : to;
  const stubs = [stays.length > 0 ? [start] : [], ends.length > 0 ? [end] : []] as const;
  return inner([...before, ...stays, ...stubs[0], shifted(start), shifted(end), ...stubs[1], ...ends, ...after]);
}

/**
 * The bends once a segment is parted at the place nearest to a spot, and what lies beyond it has moved sideways by so many
 * grid units: a step in the wire. Parted at its very end, it moves whole.
 */
export function bendAdded(path: readonly Spot[], index: number, at: Spot, by: GridUnits): Bends {
  const [from, to] = [path[index], path[index + 1]];
  if (!from || !to) return inner(path);
  const isLevel = from.y === to.y;
  const place = isLevel
    ? { x: within(Math.round(at.x), from.x, to.x), y: from.y }
    : { x: from.x, y: within(Math.round(at.y), from.y, to.y) };
  if ([from, to].some(({ x, y }) => x === place.x && y === place.y)) return segmentMoved(path, index, by);
  const parted = [...path.slice(0, index + 1), place, place, ...path.slice(index + 1)];
  return segmentMoved(parted, index + 2, by);
}

/**
 * The bends once the bend at corner `index` of the path is taken out, with the nearest one to it where the wire would no
 * longer be at right angles. The last of all gone, the list is empty and the program lays the wire.
 */
export function bendRemoved(path: readonly Spot[], index: number): Bends {
  const last = path.length - 1;
  if (index <= 0 || index >= last) return inner(path);
  if (last < 3) return [];
  const isShorter = index > 1 && (index + 1 >= last || span(path, index - 1) <= span(path, index));
  const jog = isShorter ? index - 1 : index;
  const [from, to] = [path[jog]!, path[jog + 1]!];
  const isLevel = from.y === to.y;
  // The piece before the step or the one after it moves into line with the other; an end piece cannot.
  if (jog + 2 < last)
    return inner([...path.slice(0, jog), onLine(path[jog + 2]!, from, isLevel), ...path.slice(jog + 3)]);
  if (jog > 1) return inner([...path.slice(0, jog - 1), onLine(path[jog - 1]!, to, isLevel), ...path.slice(jog + 2)]);
  const [first, end] = [path[0]!, path[last]!];
  return inner([first, isLevel ? { x: first.x, y: end.y } : { x: end.x, y: first.y }, end]);
}

/** The spot moved into line with another across a step: sideways where the step is level. */
function onLine({ x, y }: Spot, line: Spot, isLevel: boolean): Spot {
  return isLevel ? { x: line.x, y } : { x, y: line.y };
}

/** The corners between the ends, without those on one straight stretch. */
function inner(path: readonly Spot[]): Bends {
  const apart = path.filter(({ x, y }, index) => x !== path[index - 1]?.x || y !== path[index - 1]?.y);
  return straightened(apart)
    .slice(1, -1)
    .map(({ x, y }) => [x, y]);
}

/** The end of the stub from a terminal towards the next corner; shorter where the way is to hold so many pieces. */
function towards(terminal: Spot, corner: Spot, pieces: number): Spot {
  const step = (from: GridUnits, to: GridUnits): GridUnits => {
    const most = Math.floor(Math.abs(to - from) / pieces);
    return from + Math.sign(to - from) * Math.min(STUB, most);
  };
  return { x: step(terminal.x, corner.x), y: step(terminal.y, corner.y) };
}

function within(value: number, one: number, other: number): number {
  return Math.min(Math.max(value, Math.min(one, other)), Math.max(one, other));
}

function span(path: readonly Spot[], index: number): GridUnits {
  const [from, to] = [path[index]!, path[index + 1]!];
  return Math.abs(to.x - from.x) + Math.abs(to.y - from.y);
}
