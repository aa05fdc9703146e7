import type { GridUnits } from "../base/units.ts";
import { type Bounds, gapBetween } from "../drawing/measure.ts";
import type { SheetPart } from "./sheetSetup.ts";

/** Squares are numbered along their columns, so many to each: more than any sheet is high. */
const ROW = 100_000;

/** Finds the outlines of all other parts that are no farther from one than `reach`. */
export function neighboursWithin(
  parts: readonly SheetPart[],
  reach: GridUnits,
): (part: SheetPart) => readonly Bounds[] {
  let squares: ReadonlyMap<number, readonly Bounds[]> | null = null;
  return ({ shape: { outline: own } }) => {
    squares ??= inSquares(parts, reach);
    const all = squares;
    const near = new Set(squaresOf(own, reach, reach).flatMap((key) => all.get(key) ?? []));
    return [...near].filter((outline) => outline !== own && gapBetween(own, outline) <= reach);
  };
}

/** Every outline listed in the squares that it lies in. */
function inSquares(parts: readonly SheetPart[], side: GridUnits): ReadonlyMap<number, readonly Bounds[]> {
  const squares = new Map<number, Bounds[]>();
  for (const { shape } of parts) {
    for (const key of squaresOf(shape.outline, 0, side)) {
      const list = squares.get(key);
      if (list) list.push(shape.outline);
      else squares.set(key, [shape.outline]);
    }
  }
  return squares;
}

function squaresOf(box: Bounds, grown: GridUnits, side: GridUnits): readonly number[] {
  const keys: number[] = [];
  for (let x = Math.floor((box.left - grown) / side); x <= Math.floor((box.right + grown) / side); x++) {
    for (let y = Math.floor((box.top - grown) / side); y <= Math.floor((box.bottom + grown) / side); y++) {
      keys.push(x * ROW + y);
    }
  }
  return keys;
}
