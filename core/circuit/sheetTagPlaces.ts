import type { GridUnits } from "../base/units.ts";
import type { Spot } from "../drawing/mark.ts";
import type { Side } from "../parts/kind.ts";
import type { Block } from "./sheetBlocks.ts";
import { piecesOf } from "./sheetWire.ts";

/** A place for a tag beside a wire. */
export interface TagPlace {
  /** True beside a level piece, above or below it; false beside an upright one. */
  readonly isLevel: boolean;
  /** Where the tag lies from its wire. */
  readonly side: Side;
  /** Top left of a block set here. */
  readonly at: (block: Block) => { readonly left: GridUnits; readonly top: GridUnits };
}

/** A straight piece of a wire. */
export type TagPiece = ReturnType<typeof piecesOf>[number];

/** The straight pieces of a stretch, the longest first. */
export function tagPieces(corners: readonly Spot[], from: GridUnits, to: GridUnits): readonly TagPiece[] {
  return piecesOf(corners, from, to).sort((one, other) => other.length - one.length || one.start - other.start);
}

/** Places along pieces of a wire, `off` from its middle, from the middle of each piece outwards, on both sides of it. */
export function* tagPlaces(pieces: readonly TagPiece[], off: GridUnits): Generator<TagPlace> {
  for (const { a, b, length } of pieces) {
    const isLevel = a.y === b.y;
    const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
    for (let shift = 0; shift <= length / 2; shift = shift <= 0 ? 1 - shift : -shift) {
      if (isLevel) yield* beside(middle.x + shift, middle.y, off);
      else yield* along(middle.x, middle.y + shift, off);
    }
  }
}

function* beside(x: GridUnits, y: GridUnits, off: GridUnits): Generator<TagPlace> {
  yield { isLevel: true, side: "up", at: ({ width, height }) => ({ left: x - width / 2, top: y - off - height }) };
  yield { isLevel: true, side: "down", at: ({ width }) => ({ left: x - width / 2, top: y + off }) };
}

function* along(x: GridUnits, y: GridUnits, off: GridUnits): Generator<TagPlace> {
  yield { isLevel: false, side: "right", at: ({ height }) => ({ left: x + off, top: y - height / 2 }) };
  yield { isLevel: false, side: "left", at: ({ width, height }) => ({ left: x - off - width, top: y - height / 2 }) };
}
