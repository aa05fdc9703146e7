import type { Millimetres } from "../base/units.ts";
import type { Mark } from "../drawing/mark.ts";

/** Something laid out: how high it is, and its marks with the top left at x, y. All in millimetres. */
export interface Piece {
  readonly height: Millimetres;
  at(x: Millimetres, y: Millimetres): readonly Mark[];
}

/** Nothing, this high. */
export function space(height: Millimetres): Piece {
  return { height, at: () => [] };
}

/** Pieces one below the other, with a gap between those that have a height. */
export function stack(pieces: readonly Piece[], gap: Millimetres = 0): Piece {
  const shown = pieces.filter((piece) => piece.height > 0);
  const height = shown.reduce((sum, piece) => sum + piece.height, 0) + gap * Math.max(0, shown.length - 1);
  return {
    height,
    at(x, y) {
      let top = y;
      return shown.flatMap((piece) => {
        const marks = piece.at(x, top);
        top += piece.height + gap;
        return marks;
      });
    },
  };
}

/** Pieces side by side, each at its distance from the left; tops level, or middles. */
export function beside(
  pieces: readonly { readonly x: Millimetres; readonly piece: Piece }[],
  align: "top" | "middle" = "top",
): Piece {
  const height = Math.max(0, ...pieces.map(({ piece }) => piece.height));
  const drop = (piece: Piece): Millimetres => (align === "middle" ? (height - piece.height) / 2 : 0);
  return { height, at: (x, y) => pieces.flatMap((each) => each.piece.at(x + each.x, y + drop(each.piece))) };
}
