import { remember } from "../base/memo.ts";
import type { GridUnits } from "../base/units.ts";
import type { Spot } from "../drawing/mark.ts";
import { piecesOf, type SheetWire, spotKey } from "./sheetWire.ts";

/** How far a chevron keeps from a busy spot. */
const CLEAR: GridUnits = 1.4;
/** Side of the squares by which busy spots are found again; no less than CLEAR, so that they lie in or next to one. */
const SQUARE: GridUnits = 2;

/** A spot on the grid that wires pass. */
interface Passed {
  readonly at: Spot;
  wires: number;
}

/** Corners, ends, joins and crossings of wires, where no chevron may stand. Wires come and go. */
export class BusySpots {
  private readonly squares = new Map<number, Spot[]>();
  private readonly passed = new Map<number, Passed>();

  add(wire: SheetWire): void {
    const { fixed, passing } = spotsOf(wire);
    for (const spot of fixed) this.put(spot);
    for (const at of passing) {
      const key = spotKey(at.x, at.y);
      const known = this.passed.get(key);
      if (known === undefined) this.passed.set(key, { at, wires: 1 });
      else if (++known.wires === 2) this.put(known.at);
    }
  }

  /** Takes out a wire that was added. */
  remove(wire: SheetWire): void {
    const { fixed, passing } = spotsOf(wire);
    for (const spot of fixed) this.drop(spot);
    for (const { x, y } of passing) {
      const key = spotKey(x, y);
      const known = this.passed.get(key)!;
      known.wires--;
      if (known.wires === 1) this.drop(known.at);
      if (known.wires === 0) this.passed.delete(key);
    }
  }

  isClear(at: Spot): boolean {
    const [column, row] = [Math.floor(at.x / SQUARE), Math.floor(at.y / SQUARE)];
    for (let x = column - 1; x <= column + 1; x++) {
      for (let y = row - 1; y <= row + 1; y++) {
        const near = this.squares.get(spotKey(x, y));
        if (near?.some((spot) => Math.hypot(at.x - spot.x, at.y - spot.y) < CLEAR)) return false;
      }
    }
    return true;
  }

  private put(spot: Spot): void {
    const key = squareOf(spot);
    const list = this.squares.get(key);
    if (list) list.push(spot);
    else this.squares.set(key, [spot]);
  }

  private drop(spot: Spot): void {
    const list = this.squares.get(squareOf(spot))!;
    const index = list.findIndex(({ x, y }) => x === spot.x && y === spot.y);
    list.splice(index, 1);
  }
}

function squareOf({ x, y }: Spot): number {
  return spotKey(Math.floor(x / SQUARE), Math.floor(y / SQUARE));
}

/** Corners, ends and joins of a wire, and the spots on the grid that it passes between them. */
const spotsOf = remember(({ corners, dots, from, to }: SheetWire) => {
  const passing = piecesOf(corners, from, to).flatMap(({ a, b, length }) => {
    const steps = Array.from({ length: Math.max(0, Math.ceil(length) - 1) }, (_, index) => (index + 1) / length);
    return steps.map((share): Spot => ({ x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share }));
  });
  return { fixed: [...corners, ...dots.map(({ at }) => at)], passing };
});
