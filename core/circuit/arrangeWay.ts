import type { Spot } from "../drawing/mark.ts";
import type { Bounds } from "../drawing/measure.ts";
import type { Side } from "../parts/kind.ts";

/** A terminal on the page, and the side where its wires leave. */
export interface WayEnd extends Spot {
  readonly side: Side;
}

const DX: Readonly<Record<Side, number>> = { left: -1, right: 1, up: 0, down: 0 };
const DY: Readonly<Record<Side, number>> = { left: 0, right: 0, up: -1, down: 1 };
/** How far a wire runs straight from its terminal. */
const STUB = 2;

/**
 * The corners of the plainest way between two terminals, as the router would lay the wire with nothing on the page but
 * their two parts: straight, with one bend or two, and round the parts where they stand in the way. A way with two bends
 * runs `aside` of the middle, so that wires of one channel lie beside each other. Ends included; each leg is level or
 * upright.
 */
export function plainWay(from: WayEnd, to: WayEnd, aside: number, bodies: readonly Bounds[] = []): readonly Spot[] {
  const start = { x: from.x + DX[from.side] * STUB, y: from.y + DY[from.side] * STUB };
  const end = { x: to.x + DX[to.side] * STUB, y: to.y + DY[to.side] * STUB };
  const levelFirst = [start, { x: end.x, y: start.y }, end];
  const uprightFirst = [start, { x: start.x, y: end.y }, end];
  const byX = (x: number): readonly Spot[] => [start, { x, y: start.y }, { x, y: end.y }, end];
  const byY = (y: number): readonly Spot[] => [start, { x: start.x, y }, { x: end.x, y }, end];
  // Nothing between two terminals that are not in line has fewer bends than one.
  const least = from.x === to.x || from.y === to.y ? 0 : 1;
  let best: readonly Spot[] = [];
  let lowest = Number.POSITIVE_INFINITY;
  const isFound = (corners: readonly Spot[]): boolean => {
    const way = [from, ...corners, to];
    const cost = bendsOf(way) + THROUGH * bodies.reduce((sum, body) => sum + hitsOf(way, body), 0);
    if (cost < lowest) {
      lowest = cost;
      best = way;
    }
    return lowest <= least;
  };
  if (isFound(uprightFirst) || isFound(levelFirst)) return best;
  isFound(byX(between(start.x, end.x, aside)));
  isFound(byY(between(start.y, end.y, aside)));
  if (lowest < THROUGH) return best;
  for (const { left, top, right, bottom } of bodies) {
    for (const x of [left - STUB, right + STUB]) isFound(byX(x));
    for (const y of [top - STUB, bottom + STUB]) isFound(byY(y));
  }
  return best;
}

/** Cost of a leg through one of the two parts. */
const THROUGH = 8;

/** How many legs of a way run through a body, not only along its edge. */
function hitsOf(way: readonly Spot[], { left, top, right, bottom }: Bounds): number {
  let hits = 0;
  for (let i = 1; i < way.length; i++) {
    const [a, b] = [way[i - 1]!, way[i]!];
    const isIn =
      Math.min(a.x, b.x) < right - 0.5 &&
      Math.max(a.x, b.x) > left + 0.5 &&
      Math.min(a.y, b.y) < bottom - 0.5 &&
      Math.max(a.y, b.y) > top + 0.5;
    if (isIn) hits += 1;
  }
  return hits;
}

/** The middle, so much aside where there is room between the two. */
function between(one: number, other: number, aside: number): number {
  const room = Math.abs(one - other) / 2;
  return Math.round((one + other) / 2 + Math.max(-room, Math.min(room, aside)));
}

/** Cost of a turn back on itself, which the router lays as two bends round something. */
const BACK = 2.5;

/** How often a way bends; a turn back counts for more than one. */
export function bendsOf(way: readonly Spot[]): number {
  let bends = 0;
  let [dx, dy] = [0, 0];
  for (let i = 1; i < way.length; i++) {
    const [nextX, nextY] = [Math.sign(way[i]!.x - way[i - 1]!.x), Math.sign(way[i]!.y - way[i - 1]!.y)];
    if (nextX === 0 && nextY === 0) continue;
    if (dx !== 0 || dy !== 0) {
      if (dx === -nextX && dy === -nextY) bends += BACK;
      else if (dx !== nextX || dy !== nextY) bends += 1;
    }
    [dx, dy] = [nextX, nextY];
  }
  return bends;
}
