import { type RouteGrid, towards } from "./routeGrid.ts";

/** The way of a wire as neighbouring nodes, both terminals included. */
export type Way = readonly number[];

/** A wire runs level over a node, upright, or, where it turns or ends, both: only a straight stretch can be crossed. */
const LEVEL = 1;
const UPRIGHT = 2;

/** How many wires run over each node, level and upright: one entry a node. */
export class Taken {
  readonly level: Uint16Array;
  readonly upright: Uint16Array;
  private readonly grid: RouteGrid;

  /** Nothing taken yet. */
  constructor(grid: RouteGrid) {
    this.grid = grid;
    this.level = new Uint16Array(grid.columns * grid.rows);
    this.upright = new Uint16Array(grid.columns * grid.rows);
  }

  /** Takes what a way runs over. */
  add(way: Way): void {
    this.count(way, 1);
  }

  /** Gives back what a way ran over. */
  remove(way: Way): void {
    this.count(way, -1);
  }

  private count(way: Way, by: number): void {
    for (let i = 0; i < way.length; i++) {
      const runs = runsAt(this.grid, way, i);
      if ((runs & LEVEL) !== 0) this.level[way[i]!]! += by;
      if ((runs & UPRIGHT) !== 0) this.upright[way[i]!]! += by;
    }
  }
}

/** How a way runs over its node `i`. */
function runsAt(grid: RouteGrid, way: Way, i: number): number {
  if (i === 0 || i === way.length - 1) return LEVEL | UPRIGHT;
  const into = towards(grid, way[i - 1]!, way[i]!) % 2;
  const out = towards(grid, way[i]!, way[i + 1]!) % 2;
  return (into === 0 || out === 0 ? LEVEL : 0) | (into === 1 || out === 1 ? UPRIGHT : 0);
}

/** Tells of other ways whether this one runs along them anywhere, instead of straight across. */
export function runsAlong(grid: RouteGrid, way: Way): (other: Way) => boolean {
  // Unlike a way that is taken, this one ends on a terminal of its own: only the steps that it makes count.
  const own = new Map<number, number>();
  way.forEach((node, i) => {
    const into = i > 0 ? Math.abs(node - way[i - 1]!) : 0;
    const out = i < way.length - 1 ? Math.abs(way[i + 1]! - node) : 0;
    const runs = (into === 1 || out === 1 ? LEVEL : 0) | (into > 1 || out > 1 ? UPRIGHT : 0);
    own.set(node, (own.get(node) ?? 0) | runs);
  });
  return (other) => other.some((node, i) => ((own.get(node) ?? 0) & runsAt(grid, other, i)) !== 0);
}
