import type { Position } from "../../core/parts/kind.ts";

/** Positions as they lie on the handle: rest in the middle where both others spring back to it. */
export function asOnTheHandle(positions: readonly Position[]): readonly Position[] {
  const [rest, one, other] = positions;
  if (positions.length !== 3 || !rest || !one || !other) return positions;
  const both = one.springsBackTo === rest.name && other.springsBackTo === rest.name;
  return both ? [other, rest, one] : positions;
}

/** A press this short leaves a spring-back position pinned; a longer one lets go with the finger. */
export const SHORT_PRESS_MS = 300;

/**
 * What the end of a press on a spring-back position does, given how long it was pressed and whether it was pinned before.
 * Where a click latches, the length of the press does not count.
 */
export function afterPress(pressedMs: number, wasPinned: boolean, latches: boolean): "pin" | "let-go" {
  return (latches || pressedMs < SHORT_PRESS_MS) && !wasPinned ? "pin" : "let-go";
}
