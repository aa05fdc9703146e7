import type { Spot } from "../../core/drawing/mark.ts";

/**
 * The corners by which a right-angle line goes on to a spot, the spot itself last. The first piece leaves as the terminal
 * faces; each further one leaves at a right angle to the piece before it, or goes straight on.
 */
export function elbow(line: readonly Spot[], to: Spot, first: "across" | "down"): readonly Spot[] {
  const from = line.at(-1)!;
  if (from.x === to.x || from.y === to.y) return [to];
  const before = line.at(-2);
  const isLevel = before ? before.y === from.y && before.x !== from.x : first === "down";
  // After a level piece the next one goes down first.
  return [isLevel ? { x: from.x, y: to.y } : { x: to.x, y: from.y }, to];
}

/** Corners without those that lie on one straight stretch, or twice in a row. */
export function joinedUp(corners: readonly Spot[]): readonly Spot[] {
  const apart = corners.filter(({ x, y }, at) => at === 0 || corners[at - 1]!.x !== x || corners[at - 1]!.y !== y);
  return apart.filter((spot, at) => {
    const [before, after] = [apart[at - 1], apart[at + 1]];
    if (!before || !after) return true;
    const isStraight = (before.x === spot.x && spot.x === after.x) || (before.y === spot.y && spot.y === after.y);
    return !isStraight;
  });
}
