import type { Spot } from "../drawing/mark.ts";
import type { Bounds } from "../drawing/measure.ts";
import type { Side } from "../parts/kind.ts";

/** Directions in the order right, down, left, up; level ones are even, and `(d + 2) % 4` is the way back. */
export type Direction = 0 | 1 | 2 | 3;
export const DIRECTIONS: readonly Direction[] = [0, 1, 2, 3];

/** The direction in which a wire leaves a terminal on this side. */
export function directionOf(side: Side): Direction {
  return side === "right" ? 0 : side === "down" ? 1 : side === "left" ? 2 : 3;
}

/** The opposite direction. */
export function back(direction: Direction): Direction {
  return ((direction + 2) % 4) as Direction;
}

/** Extra cost of a step close to a body, and of a step through words, in units of length. */
const CLOSE_TO_BODY = 1.5;
const THROUGH_WORDS = 15;
/** Extra cost of a step on the place where another terminal's wire must leave. */
const BEFORE_A_TERMINAL = 20;

/** Cost of a step across a bar, which is some of them wide: together about that of crossing a wire. */
const ACROSS_BAR = 1;
/** In `blocked`: a wire may pass straight across a bar, level. */
const ONLY_LEVEL = 2;
/** The same, upright. */
const ONLY_UPRIGHT = 3;

/** The page as nodes one grid unit apart, row by row. Arrays have one entry for each node. */
export interface RouteGrid {
  readonly left: number;
  readonly top: number;
  readonly columns: number;
  readonly rows: number;
  /** 1 where no wire may pass, `ONLY_LEVEL` or `ONLY_UPRIGHT` where one may pass straight across a bar. */
  readonly blocked: Uint8Array;
  /** What a step onto the node costs beyond its length. */
  readonly toll: Float32Array;
  /** Change of the node number for one step in each direction. */
  readonly step: readonly [number, number, number, number];
}

/** The grid of a page: nodes outside `bounds` do not exist, those in bodies are blocked, those in words cost more. */
export function gridOf(bounds: Bounds, bodies: readonly Bounds[], words: readonly Bounds[]): RouteGrid {
  const left = Math.ceil(bounds.left);
  const top = Math.ceil(bounds.top);
  const columns = Math.max(1, Math.floor(bounds.right) - left + 1);
  const rows = Math.max(1, Math.floor(bounds.bottom) - top + 1);
  const grid: RouteGrid = {
    left,
    top,
    columns,
    rows,
    blocked: new Uint8Array(columns * rows),
    toll: new Float32Array(columns * rows),
    step: [1, columns, -1, -columns],
  };
  const { toll } = grid;
  const most = (cost: number) => (node: number) => {
    if (toll[node]! < cost) toll[node] = cost;
  };
  for (const box of words) eachNode(grid, box, 0.35, most(THROUGH_WORDS));
  for (const box of bodies) eachNode(grid, box, 1, most(CLOSE_TO_BODY));
  for (const box of bodies) {
    eachNode(grid, box, 0, (node) => {
      grid.blocked[node] = 1;
    });
  }
  return grid;
}

/** Opens a straight way across the body of a bar, level or upright, for wires that cross it. */
export function openAcross(grid: RouteGrid, way: Bounds): void {
  const passes = way.top === way.bottom ? ONLY_LEVEL : ONLY_UPRIGHT;
  eachNode(grid, way, 0, (node) => {
    grid.blocked[node] = passes;
    grid.toll[node] = Math.max(grid.toll[node]!, ACROSS_BAR);
  });
}

/** Writes what a step onto each node costs, level or upright, with no wire laid yet; infinite where it is not allowed. */
export function writeCosts({ blocked, toll }: RouteGrid, isLevel: boolean, costs: Float32Array): void {
  const passes = isLevel ? ONLY_LEVEL : ONLY_UPRIGHT;
  for (let node = 0; node < costs.length; node++) {
    const isOpen = blocked[node] === 0 || blocked[node] === passes;
    costs[node] = isOpen ? 1 + toll[node]! : Number.POSITIVE_INFINITY;
  }
}

/** Makes the place before a terminal dear for other wires. */
export function reserve(grid: RouteGrid, node: number): void {
  grid.toll[node] = Math.max(grid.toll[node]!, BEFORE_A_TERMINAL);
}

/** Runs over the nodes of a box grown by `margin` on all sides, as far as they are on the grid. */
function eachNode(grid: RouteGrid, box: Bounds, margin: number, act: (node: number) => void): void {
  const fromX = Math.max(0, Math.ceil(box.left - margin) - grid.left);
  const toX = Math.min(grid.columns - 1, Math.floor(box.right + margin) - grid.left);
  const fromY = Math.max(0, Math.ceil(box.top - margin) - grid.top);
  const toY = Math.min(grid.rows - 1, Math.floor(box.bottom + margin) - grid.top);
  for (let y = fromY; y <= toY; y++) for (let x = fromX; x <= toX; x++) act(y * grid.columns + x);
}

/** The node at a spot, rounded to the grid; -1 outside. */
export function nodeAt(grid: RouteGrid, spot: Spot): number {
  const x = Math.round(spot.x) - grid.left;
  const y = Math.round(spot.y) - grid.top;
  return x < 0 || y < 0 || x >= grid.columns || y >= grid.rows ? -1 : y * grid.columns + x;
}

/** Where a node lies on the page. */
export function spotOf(grid: RouteGrid, node: number): Spot {
  return { x: (node % grid.columns) + grid.left, y: Math.floor(node / grid.columns) + grid.top };
}

/** The node one step on; -1 where that would leave the grid. */
export function nextNode(grid: RouteGrid, node: number, direction: Direction): number {
  const x = node % grid.columns;
  if (direction === 0 && x === grid.columns - 1) return -1;
  if (direction === 2 && x === 0) return -1;
  const next = node + grid.step[direction];
  return next < 0 || next >= grid.columns * grid.rows ? -1 : next;
}

/** The direction from a node to a neighbour; rightwards where the two are none. */
export function towards(grid: RouteGrid, from: number, to: number): Direction {
  const direction = grid.step.indexOf(to - from);
  return Math.max(direction, 0) as Direction;
}
