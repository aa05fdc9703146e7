import type { Spot } from "../drawing/mark.ts";
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
 * The corners of the plainest way between two terminals, as the router would lay the wire on an empty page: straight,
 * with one bend or two, and only where it must turn back with more. A way with two bends runs `aside` of the middle, so
 * that wires of one channel lie beside each other. Ends included; each leg is level or upright.
 */
export function plainWay(from: WayEnd, to: WayEnd, aside: number): readonly Spot[] {
  const start = { x: from.x + DX[from.side] * STUB, y: from.y + DY[from.side] * STUB };
  const end = { x: to.x + DX[to.side] * STUB, y: to.y + DY[to.side] * STUB };
  const isInLine = from.x === to.x || from.y === to.y;
  const middle = { x: between(start.x, end.x, aside), y: between(start.y, end.y, aside) };
  const inner: readonly (readonly Spot[])[] = [
    [start, { x: start.x, y: end.y }, end],
    [start, { x: end.x, y: start.y }, end],
    [start, { x: middle.x, y: start.y }, { x: middle.x, y: end.y }, end],
    [start, { x: start.x, y: middle.y }, { x: end.x, y: middle.y }, end],
  ];
  let best: readonly Spot[] = [];
  let least = Number.POSITIVE_INFINITY;
  for (const corners of inner) {
    const way = [from, ...corners, to];
    const cost = bendsOf(way);
    if (cost >= least) continue;
    least = cost;
    best = way;
    // Nothing between two terminals that are not in line has fewer bends.
    if (cost <= (isInLine ? 0 : 1)) break;
  }
  return best;
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
