import { type RouteGrid, towards, writeCosts } from "./routeGrid.ts";

/** The way of a wire as neighbouring nodes, both terminals included. */
export type Way = readonly number[];

/** Costs in units of length: a crossing and a unit run right beside another wire are worth a detour. */
const CROSSING = 6;
const BESIDE = 7;

/** A wire runs level over a node, upright, or, where it turns or ends, both: only a straight stretch can be crossed. */
const LEVEL = 1;
const UPRIGHT = 2;

/** What wires run over on a grid. All arrays have one entry a node. */
export class Taken {
  /** How many wires run over the node. */
  readonly level: Uint16Array;
  readonly upright: Uint16Array;
  /** What a step onto the node costs, level and upright; what it costs to run over another wire comes on top. */
  readonly enterLevel: Float32Array;
  readonly enterUpright: Float32Array;
  private grid: RouteGrid;

  /** Nothing taken yet. */
  constructor(grid: RouteGrid) {
    const nodes = grid.columns * grid.rows;
    this.level = new Uint16Array(nodes);
    this.upright = new Uint16Array(nodes);
    this.enterLevel = new Float32Array(nodes);
    this.enterUpright = new Float32Array(nodes);
    this.grid = grid;
    this.moveTo(grid);
  }

  /** Begins anew with nothing taken, on this grid or another of its size. */
  moveTo(grid: RouteGrid): void {
    this.grid = grid;
    this.level.fill(0);
    this.upright.fill(0);
    writeCosts(grid, true, this.enterLevel);
    writeCosts(grid, false, this.enterUpright);
  }

  /** Takes what a way runs over. */
  add(way: Way): void {
    for (let i = 0; i < way.length; i++) {
      const runs = runsAt(this.grid, way, i);
      const node = way[i]!;
      if ((runs & LEVEL) !== 0 && this.level[node]!++ === 0) this.charge(LEVEL, node, 1);
      if ((runs & UPRIGHT) !== 0 && this.upright[node]!++ === 0) this.charge(UPRIGHT, node, 1);
    }
  }

  /** Gives back what a way ran over. */
  remove(way: Way): void {
    for (let i = 0; i < way.length; i++) {
      const runs = runsAt(this.grid, way, i);
      const node = way[i]!;
      if ((runs & LEVEL) !== 0 && --this.level[node]! === 0) this.charge(LEVEL, node, -1);
      if ((runs & UPRIGHT) !== 0 && --this.upright[node]! === 0) this.charge(UPRIGHT, node, -1);
    }
  }

  /** Makes the nodes beside a wire and across it dearer, or cheaper again. */
  private charge(runs: number, node: number, sign: number): void {
    const [along, across] =
      runs === LEVEL ? [this.enterLevel, this.enterUpright] : [this.enterUpright, this.enterLevel];
    const { columns } = this.grid;
    across[node]! += sign * CROSSING;
    const aside = runs === LEVEL ? columns : 1;
    const hasBefore = runs === LEVEL ? node >= columns : node % columns > 0;
    const hasAfter = runs === LEVEL ? node + columns < along.length : node % columns < columns - 1;
    if (hasBefore) along[node - aside]! += sign * BESIDE;
    if (hasAfter) along[node + aside]! += sign * BESIDE;
  }
}

/** How a way runs over its node `i`. */
function runsAt(grid: RouteGrid, way: Way, i: number): number {
  if (i === 0 || i === way.length - 1) return LEVEL | UPRIGHT;
  const into = towards(grid, way[i - 1]!, way[i]!) & 1;
  const out = towards(grid, way[i]!, way[i + 1]!) & 1;
  return into === out ? (into === 0 ? LEVEL : UPRIGHT) : LEVEL | UPRIGHT;
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
