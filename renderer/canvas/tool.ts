/** A quarter turn that a part to be placed has. */
export type Turn = 0 | 90 | 180 | 270;

/** What a press on the drawing does: throw and choose, place a part of a kind, or draw a wire. */
export type Tool =
  | { readonly is: "hand" }
  | { readonly is: "part"; readonly kind: string; readonly turn: Turn; readonly flip: boolean }
  | { readonly is: "wire" };

/** The tool one starts with. */
export const HAND: Tool = { is: "hand" };

/** The same part turned by a quarter clockwise. */
export function turnedOn(turn: Turn): Turn {
  return ((turn + 90) % 360) as Turn;
}
