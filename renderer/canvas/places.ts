import type { WireId } from "../../core/base/ids.ts";
import type { Mark, Spot } from "../../core/drawing/mark.ts";
import { type Bounds, boundsOfAll } from "../../core/drawing/measure.ts";
import { pathLength, spotAlong } from "../../core/drawing/path.ts";
import type { Thing } from "../state/state.ts";
import type { Standing } from "./standing.ts";

/** The lines of a wire as they are drawn: one run, or two where it is open or shares its way. */
export function wireRuns(marks: readonly Mark[], wire: WireId): readonly (readonly Spot[])[] {
  return marks.flatMap((mark) =>
    mark.mark === "line" && mark.of === wire && mark.role.startsWith("wire-") ? [mark.spots] : [],
  );
}

/** The middle of a wire as it is drawn: of its longest run. */
export function wireMiddle(runs: readonly (readonly Spot[])[]): Spot | null {
  const longest = [...runs].sort((one, other) => pathLength(other) - pathLength(one))[0];
  return longest ? spotAlong(longest, pathLength(longest) / 2).at : null;
}

/** The spot of the runs that is nearest to a spot. */
export function nearestOn(runs: readonly (readonly Spot[])[], spot: Spot): Spot | null {
  let best: { readonly at: Spot; readonly distance: number } | null = null;
  for (const run of runs) {
    for (let i = 1; i < run.length; i++) {
      const at = nearestOnPiece(run[i - 1]!, run[i]!, spot);
      const distance = Math.hypot(at.x - spot.x, at.y - spot.y);
      if (best === null || distance < best.distance) best = { at, distance };
    }
  }
  return best?.at ?? null;
}

/** Number of the straight piece of a path that is nearest to a spot, counted from 0. */
export function nearestPiece(path: readonly Spot[], spot: Spot): number {
  let [best, least] = [0, Number.POSITIVE_INFINITY];
  for (let piece = 0; piece + 1 < path.length; piece++) {
    const at = nearestOnPiece(path[piece]!, path[piece + 1]!, spot);
    const distance = Math.hypot(at.x - spot.x, at.y - spot.y);
    if (distance < least) [best, least] = [piece, distance];
  }
  return best;
}

function nearestOnPiece(a: Spot, b: Spot, spot: Spot): Spot {
  const squared = (b.x - a.x) ** 2 + (b.y - a.y) ** 2;
  if (squared === 0) return a;
  const share = Math.min(1, Math.max(0, ((spot.x - a.x) * (b.x - a.x) + (spot.y - a.y) * (b.y - a.y)) / squared));
  return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
}

/** The box round what is drawn of a part, without its words; null where it is not on the page. */
export function partBox(marks: readonly Mark[], part: string): Bounds | null {
  return boundsOfAll(marks.filter((mark) => mark.of === part && mark.mark !== "text")) ?? null;
}

/** Where a thing is on the page: of a wire its middle, of a part the middle of its box. Null where it is not on it. */
export function spotOf(thing: Thing, marks: readonly Mark[], standing: Standing): Spot | null {
  switch (thing.is) {
    case "point":
      return standing.spots.get(thing.id) ?? null;
    case "wire":
      return wireMiddle(wireRuns(marks, thing.id));
    case "part": {
      const box = standing.parts.get(thing.id)?.box;
      return box ? { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 } : null;
    }
  }
}
