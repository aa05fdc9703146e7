import type { Spot } from "../drawing/mark.ts";
import type { Bounds } from "../drawing/measure.ts";
import type { Side } from "../parts/kind.ts";
import {
  back,
  DIRECTIONS,
  type Direction,
  directionOf,
  nextNode,
  nodeAt,
  type RouteGrid,
  towards,
} from "./routeGrid.ts";
import type { Goal, Start } from "./routeRules.ts";
import type { Way } from "./routeTaken.ts";

/** One end of a wire on the page: where its terminal is, where it leaves, and the number of the body it belongs to. */
export interface RouteEnd {
  readonly spot: Spot;
  readonly side: Side;
  readonly body: number;
}

/** The straight way out of a body: nodes from the terminal to the last one inside, then the free node before it. */
export interface Exit {
  readonly inside: Way;
  readonly node: number;
  readonly direction: Direction;
}

/** How a wire leaves this terminal; null where that leads off the page. */
export function exitOf(grid: RouteGrid, end: RouteEnd, bodies: readonly Bounds[]): Exit | null {
  const direction = directionOf(end.side);
  const body = bodies[end.body];
  const inside: number[] = [];
  let node = nodeAt(grid, end.spot);
  if (node < 0) return null;
  do {
    inside.push(node);
    node = nextNode(grid, node, direction);
  } while (node >= 0 && body !== undefined && holds(grid, body, node));
  return node < 0 ? null : { inside, node, direction };
}

function holds(grid: RouteGrid, box: Bounds, node: number): boolean {
  const x = (node % grid.columns) + grid.left;
  const y = Math.floor(node / grid.columns) + grid.top;
  return x >= box.left && x <= box.right && y >= box.top && y <= box.bottom;
}

/** How far from their common terminal two wires may share a line before they fork at a dot. */
const SHARED = 4;
/** Length that every wire keeps for itself beyond the fork, so that its tag belongs to it alone. */
const ITS_OWN = 4;

interface Joint {
  readonly node: number;
  readonly way: Way;
  readonly arms: number;
}

/** Places where a further wire of this terminal may branch off those already laid, nearest first. */
export function jointsOf(grid: RouteGrid, exit: Exit, mates: readonly Way[]): readonly Joint[] {
  const terminal = exit.inside[0]!;
  const outward = mates.map((way) => (way[0] === terminal ? way : [...way].reverse()));
  const joints = new Map<number, Joint>();
  for (const way of outward) {
    const last = Math.min(exit.inside.length + SHARED, way.length - 1 - ITS_OWN);
    for (let i = exit.inside.length; i <= Math.max(last, exit.inside.length); i++) {
      const node = way[i];
      if (node === undefined || i === way.length - 1) break;
      const known = joints.get(node);
      const arms = (1 << towards(grid, node, way[i - 1]!)) | (1 << towards(grid, node, way[i + 1]!));
      joints.set(node, { node, way: known?.way ?? way.slice(0, i), arms: arms | (known?.arms ?? 0) });
    }
  }
  return [...joints.values()];
}

/** Cost of a fork, and of a fourth arm at a dot, which reads worse than two dots. */
const FORK = 3;
const FOURTH_ARM = 6;

function jointCost(joint: Joint): number {
  const arms = DIRECTIONS.filter((direction) => (joint.arms & (1 << direction)) !== 0).length;
  return joint.way.length + FORK + (arms > 2 ? FOURTH_ARM : 0);
}

/** Where a wire may start from at this exit: the free node before it, or forks on its mates. */
export function startsAt(grid: RouteGrid, exit: Exit, mates: readonly Way[]): readonly Start[] {
  if (mates.length === 0) {
    if (grid.blocked[exit.node] !== 0) return [];
    const { inside: way, node, direction } = exit;
    return [{ node, direction, cost: way.length, way, isJoint: false }];
  }
  return jointsOf(grid, exit, mates).flatMap((joint) =>
    DIRECTIONS.filter((direction) => (joint.arms & (1 << direction)) === 0).map((direction) => ({
      node: joint.node,
      direction,
      cost: jointCost(joint),
      way: joint.way,
      isJoint: true,
    })),
  );
}

/** Where a wire may arrive at this exit: the free node before it, or joints on its mates. */
export function goalsAt(grid: RouteGrid, exit: Exit, mates: readonly Way[]): readonly Goal[] {
  if (mates.length === 0) {
    if (grid.blocked[exit.node] !== 0) return [];
    const way = [...exit.inside].reverse();
    return [{ node: exit.node, enters: back(exit.direction), arms: 0, cost: way.length, way }];
  }
  return jointsOf(grid, exit, mates).map((joint) => ({
    node: joint.node,
    enters: null,
    arms: joint.arms,
    cost: jointCost(joint),
    way: [...joint.way].reverse(),
  }));
}
