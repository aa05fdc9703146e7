import type { RouteGrid } from "./routeGrid.ts";

/** Tiles are squares of so many nodes a side, as a power of two. */
const SHIFT = 3;
/** A search that comes to a node looks at most so far beyond it: at the next one and at those beside that. */
const LOOKS_BEYOND = 2;

const tileColumns = ({ columns }: RouteGrid): number => ((columns - 1) >> SHIFT) + 1;
const tileRows = ({ rows }: RouteGrid): number => ((rows - 1) >> SHIFT) + 1;

/** A set of tiles of a grid, to be filled and emptied many times. */
export class TileSet {
  private readonly nodeColumns: number;
  private readonly columns: number;
  /** By tile: the filling in which it was put in last. */
  private readonly filling: Uint32Array;
  private readonly list: number[] = [];
  private count = 0;
  private now = 1;

  /** An empty set of tiles of this grid, or any of its size. */
  constructor(grid: RouteGrid) {
    this.nodeColumns = grid.columns;
    this.columns = tileColumns(grid);
    this.filling = new Uint32Array(this.columns * tileRows(grid));
  }

  /** Puts in the tile of a node; -1, which is none, is left out. */
  add(node: number): void {
    if (node < 0) return;
    const x = node % this.nodeColumns;
    this.addAt(x, (node - x) / this.nodeColumns);
  }

  /** The same for a node by its column and row. */
  addAt(x: number, y: number): void {
    const tile = (y >> SHIFT) * this.columns + (x >> SHIFT);
    if (this.filling[tile] === this.now) return;
    this.filling[tile] = this.now;
    this.list[this.count++] = tile;
  }

  clear(): void {
    this.count = 0;
    this.now += 1;
  }

  /** Numbers of all tiles that are in. */
  tiles(): readonly number[] {
    return this.list.slice(0, this.count);
  }
}

/** When something was last changed near each tile of a grid: near enough to be looked at by a search that came into it. */
export class TileTimes {
  private readonly nodeColumns: number;
  private readonly nodeRows: number;
  private readonly columns: number;
  private readonly changed: Uint32Array;

  /** Nothing changed yet: all times are 0. */
  constructor(grid: RouteGrid) {
    this.nodeColumns = grid.columns;
    this.nodeRows = grid.rows;
    this.columns = tileColumns(grid);
    this.changed = new Uint32Array(this.columns * tileRows(grid));
  }

  /** Something changed on a node at this time, which is no earlier than any before. */
  mark(node: number, time: number): void {
    const x = node % this.nodeColumns;
    const y = (node - x) / this.nodeColumns;
    const left = Math.max(0, x - LOOKS_BEYOND) >> SHIFT;
    const right = Math.min(this.nodeColumns - 1, x + LOOKS_BEYOND) >> SHIFT;
    const top = Math.max(0, y - LOOKS_BEYOND) >> SHIFT;
    const bottom = Math.min(this.nodeRows - 1, y + LOOKS_BEYOND) >> SHIFT;
    for (let row = top; row <= bottom; row++) {
      for (let column = left; column <= right; column++) this.changed[row * this.columns + column] = time;
    }
  }

  /** True where nothing has changed near any of these tiles after that time. */
  areStill(tiles: readonly number[], since: number): boolean {
    for (let i = 0; i < tiles.length; i++) if (this.changed[tiles[i]!]! > since) return false;
    return true;
  }
}
