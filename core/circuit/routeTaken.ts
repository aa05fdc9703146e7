import { type RouteGrid, towards } from "./routeGrid.ts";

/** The way of a wire as neighbouring nodes, both terminals included. */
export type Way = readonly number[];

/**
 * Which wire runs over each node, level and upright; -1 for none. Where a wire turns or ends it has both, so that
 * only a straight stretch can be crossed.
 */
export interface Taken {
  readonly level: Int16Array;
  readonly upright: Int16Array;
}

/** A record of the size of the grid with nothing taken. */
export function nothingTaken(grid: RouteGrid): Taken {
  const nodes = grid.columns * grid.rows;
  return { level: new Int16Array(nodes).fill(-1), upright: new Int16Array(nodes).fill(-1) };
}

/** Writes into `taken` what all ways but that of wire `except` run over. */
export function takeAll(grid: RouteGrid, ways: readonly (Way | null)[], except: number, taken: Taken): void {
  taken.level.fill(-1);
  taken.upright.fill(-1);
  ways.forEach((way, wire) => {
    if (way !== null && wire !== except) takeWay(grid, way, wire, taken);
  });
}

function takeWay(grid: RouteGrid, way: Way, wire: number, taken: Taken): void {
  for (let i = 0; i < way.length; i++) {
    const node = way[i]!;
    const isEnd = i === 0 || i === way.length - 1;
    const into = i > 0 ? towards(grid, way[i - 1]!, node) % 2 : -1;
    const out = i < way.length - 1 ? towards(grid, node, way[i + 1]!) % 2 : -1;
    if (isEnd || into === 0 || out === 0) taken.level[node] = wire;
    if (isEnd || into === 1 || out === 1) taken.upright[node] = wire;
  }
}
