import { lotsFrom } from "../base/seed.ts";
import type { Share } from "../base/units.ts";
import type { ArrangeQuestion, Places } from "./arrange.ts";
import { ArrangeCost } from "./arrangeCost.ts";
import { type ArrangeRoom, AS_WEIGHED, clearPlaces } from "./arrangePlaces.ts";
import { spreadAt } from "./arrangeSpread.ts";
import { tryOf } from "./arrangeTry.ts";

/** Tries for each part that may move. */
const TRIES = 800;
/** How much worse a try may make things at first, in bends: for a layout that is thrown about, and for one that is not. */
export const HOT = 2;
export const WARM = 0.5;
/** How much worse at last. */
const COLD = 0.05;

/**
 * Straightens a layout by simulated annealing (Kirkpatrick, Gelatt and Vecchi, "Optimization by Simulated Annealing",
 * 1983): a part is brought into line with one it is wired to, exchanged with another, turned or pushed, and that is kept
 * if wires then bend and cross less, or not much more while it is `warm` (in bends). The same seed and `effort`, a share of
 * the usual tries, give the same places.
 */
export function polished(
  question: ArrangeQuestion,
  places: Places,
  room: ArrangeRoom,
  seed: number,
  warm: number,
  effort: Share = 1,
): Places | null {
  const free = question.nodes.flatMap((node, index) => (node.isFixed ? [] : [index]));
  const cost = new ArrangeCost(
    question,
    question.nodes.map((node) => spreadAt(node, places)),
    room,
  );
  const lots = lotsFrom(seed);
  const tries = effort * TRIES * free.length;
  let now = cost.total();
  let best = now;
  let kept = cost.spread.slice();
  for (let count = 0; count < tries; count++) {
    const warmth = warm * (COLD / warm) ** (count / tries);
    const moved = tryOf(cost, free, lots);
    if (moved.length === 0) continue;
    cost.move(moved);
    const next = cost.total();
    if (next <= now || lots() < Math.exp((now - next) / warmth)) {
      now = next;
      if (now < best) {
        best = now;
        kept = cost.spread.slice();
      }
      continue;
    }
    cost.moveBack();
  }
  return clearPlaces(kept, room, AS_WEIGHED);
}
