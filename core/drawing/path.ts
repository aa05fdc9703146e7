import type { Spot } from "./mark.ts";

/** Geometry of runs of straight lines. Works in any one unit; x to the right, y down. */

/** A mitre longer than this many offsets is cut off, as painters of strokes do. */
const LONGEST_MITRE = 4;

/** Length of the run from its first spot to its last. */
export function pathLength(spots: readonly Spot[]): number {
  let length = 0;
  for (let i = 1; i < spots.length; i++) length += gap(spots[i - 1]!, spots[i]!);
  return length;
}

/** Where one stands after this length from the first spot, and the way ahead in degrees clockwise from rightwards. */
export function spotAlong(spots: readonly Spot[], length: number): { readonly at: Spot; readonly degrees: number } {
  const run = withoutRepeats(spots);
  let left = Math.max(length, 0);
  for (let i = 1; i < run.length; i++) {
    const from = run[i - 1]!;
    const to = run[i]!;
    const piece = gap(from, to);
    if (left <= piece || i === run.length - 1) {
      const share = Math.min(left / piece, 1);
      const at = { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
      return { at, degrees: (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI };
    }
    left -= piece;
  }
  return { at: spots[0] ?? { x: 0, y: 0 }, degrees: 0 };
}

/**
 * The run shifted sideways by `offset`, to the right of the way from first spot to last (left where negative), with
 * mitred corners; a corner sharper than the longest mitre is cut square. Spots that repeat are dropped.
 */
export function offsetPath(spots: readonly Spot[], offset: number, closed = false): readonly Spot[] {
  const run = withoutRepeats(spots, closed);
  if (run.length < 2) return run;
  const shifted: Spot[] = [];
  run.forEach((spot, i) => {
    const before = i > 0 ? run[i - 1] : closed ? run.at(-1) : undefined;
    const after = i < run.length - 1 ? run[i + 1] : closed ? run[0] : undefined;
    shifted.push(...corner(before, spot, after, offset));
  });
  return shifted;
}

/**
 * The pieces that a dash pattern draws, cut from the run from its first spot on; a piece keeps the corners it passes.
 * `dash` is lengths drawn and left out in turn, all above zero.
 */
export function dashPieces(spots: readonly Spot[], dash: readonly number[]): readonly (readonly Spot[])[] {
  const pieces: (readonly Spot[])[] = [];
  const total = pathLength(spots);
  const period = dash.reduce((sum, each) => sum + each, 0);
  if (!(period > 0)) return [spots];
  let at = 0;
  for (let i = 0; at < total - 1e-9; i++) {
    const end = Math.min(at + dash[i % dash.length]!, total);
    if (i % 2 === 0) pieces.push(cut(spots, at, end));
    at = end;
  }
  return pieces;
}

/** Distance from a spot to the nearest place of the run; infinite where it is empty. */
export function distanceToPath(spots: readonly Spot[], spot: Spot, closed = false): number {
  if (spots.length === 1) return gap(spots[0]!, spot);
  let nearest = Number.POSITIVE_INFINITY;
  for (let i = 1; i < spots.length; i++) nearest = Math.min(nearest, distanceToPiece(spots[i - 1]!, spots[i]!, spot));
  if (closed && spots.length > 2) nearest = Math.min(nearest, distanceToPiece(spots.at(-1)!, spots[0]!, spot));
  return nearest;
}

/** True where the spot is inside the closed run (even-odd rule). */
export function isInside(spots: readonly Spot[], spot: Spot): boolean {
  let inside = false;
  for (let i = 0, j = spots.length - 1; i < spots.length; j = i++) {
    const a = spots[i]!;
    const b = spots[j]!;
    const crosses = a.y > spot.y !== b.y > spot.y;
    if (crosses && spot.x < ((b.x - a.x) * (spot.y - a.y)) / (b.y - a.y) + a.x) inside = !inside;
  }
  return inside;
}

/** Most lines of a drawing are level or upright; the length of another takes many times as long to work out. */
function gap(a: Spot, b: Spot): number {
  const [across, down] = [Math.abs(b.x - a.x), Math.abs(b.y - a.y)];
  return across === 0 ? down : down === 0 ? across : Math.hypot(across, down);
}

function withoutRepeats(spots: readonly Spot[], closed = false): readonly Spot[] {
  const isRepeat = (spot: Spot, i: number) => i > 0 && gap(spots[i - 1]!, spot) <= 1e-9;
  const run = spots.some(isRepeat) ? spots.filter((spot, i) => !isRepeat(spot, i)) : spots;
  return closed && run.length > 1 && gap(run[0]!, run.at(-1)!) <= 1e-9 ? run.slice(0, -1) : run;
}

/** Unit vector to the right of the way from a to b. */
function rightOf(a: Spot, b: Spot): Spot {
  const length = gap(a, b);
  return { x: -(b.y - a.y) / length, y: (b.x - a.x) / length };
}

function corner(before: Spot | undefined, spot: Spot, after: Spot | undefined, offset: number): readonly Spot[] {
  const shift = (right: Spot): Spot => ({ x: spot.x + right.x * offset, y: spot.y + right.y * offset });
  if (!before && !after) return [spot];
  if (!before) return [shift(rightOf(spot, after!))];
  const coming = rightOf(before, spot);
  if (!after) return [shift(coming)];
  const going = rightOf(spot, after);
  // The mitre lies along the sum of both normals; its length grows with the sharpness of the turn.
  const share = 1 + coming.x * going.x + coming.y * going.y;
  if (share < 2 / (LONGEST_MITRE * LONGEST_MITRE)) return [shift(coming), shift(going)];
  return [shift({ x: (coming.x + going.x) / share, y: (coming.y + going.y) / share })];
}

/** The part of the run between two lengths from its start. */
function cut(spots: readonly Spot[], start: number, end: number): readonly Spot[] {
  const piece: Spot[] = [spotAlong(spots, start).at];
  let passed = 0;
  for (let i = 1; i < spots.length - 1; i++) {
    passed += gap(spots[i - 1]!, spots[i]!);
    if (passed > start + 1e-9 && passed < end - 1e-9) piece.push(spots[i]!);
  }
  piece.push(spotAlong(spots, end).at);
  return piece;
}

function distanceToPiece(a: Spot, b: Spot, spot: Spot): number {
  const squared = (b.x - a.x) ** 2 + (b.y - a.y) ** 2;
  if (squared === 0) return gap(a, spot);
  const share = ((spot.x - a.x) * (b.x - a.x) + (spot.y - a.y) * (b.y - a.y)) / squared;
  const along = Math.min(Math.max(share, 0), 1);
  return gap({ x: a.x + (b.x - a.x) * along, y: a.y + (b.y - a.y) * along }, spot);
}
