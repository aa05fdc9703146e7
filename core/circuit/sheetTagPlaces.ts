import type { GridUnits } from "../base/units.ts";
import type { Spot } from "../drawing/mark.ts";
import type { Side } from "../parts/kind.ts";
import { piecesOf } from "./sheetWire.ts";

/** A place for a tag beside a wire, as a form of it is made for it. */
export interface TagPlace {
  /** True beside a level piece, above or below it; false beside an upright one. */
  readonly isLevel: boolean;
  /** Where the tag lies from its wire. */
  readonly side: Side;
}

/** A straight piece of a wire. */
export type TagPiece = ReturnType<typeof piecesOf>[number];

/** The straight pieces of a stretch, the longest first. */
export function tagPieces(corners: readonly Spot[], from: GridUnits, to: GridUnits): readonly TagPiece[] {
  return piecesOf(corners, from, to).sort((one, other) => other.length - one.length || one.start - other.start);
}

/**
 * Tries spots along pieces of a wire, from the middle of each piece outwards, on both sides of it; true as soon as one will
 * do. No place is made an object of: there are many, and most will not do.
 */
export function someTagPlace(
  pieces: readonly TagPiece[],
  willDo: (side: Side, x: GridUnits, y: GridUnits) => boolean,
): boolean {
  for (const { a, b, length } of pieces) {
    const isLevel = a.y === b.y;
    const [x, y] = [(a.x + b.x) / 2, (a.y + b.y) / 2];
    for (let shift = 0; shift <= length / 2; shift = shift <= 0 ? 1 - shift : -shift) {
      const isFound = isLevel
        ? willDo("up", x + shift, y) || willDo("down", x + shift, y)
        : willDo("right", x, y + shift) || willDo("left", x, y + shift);
      if (isFound) return true;
    }
  }
  return false;
}

/** The left edge of a block beside a spot of its wire, `off` from its middle. */
export function leftBeside(side: Side, x: GridUnits, width: GridUnits, off: GridUnits): GridUnits {
  return side === "right" ? x + off : side === "left" ? x - off - width : x - width / 2;
}

/** The top edge of one. */
export function topBeside(side: Side, y: GridUnits, height: GridUnits, off: GridUnits): GridUnits {
  return side === "up" ? y - off - height : side === "down" ? y + off : y - height / 2;
}
