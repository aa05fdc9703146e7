import { lotsFrom } from "../base/seed.ts";
import type { ArrangeQuestion, Places } from "./arrange.ts";
import { ArrangeCost } from "./arrangeCost.ts";
import type { ArrangeRoom } from "./arrangePlaces.ts";
import { placeIn } from "./arrangeQuestion.ts";
import { spreadAt } from "./arrangeSpread.ts";
import { tryOf } from "./arrangeTry.ts";

/** How much dearer a try may seem, in bends, and still be worth laying the wires for. */
const WORTH_LAYING = 1;
/** Tries looked at for each one that is laid, at most. */
const LOOKED_AT = 60;

/**
 * Places made better by laying all wires of the page anew after each promising try, up to so many times, and keeping what
 * then is cheaper: what a wire really does round others, only its router knows. `price` tells what the wires of a page
 * with such places cost, in bends. Never dearer than the places given.
 */
export function refined(
  question: ArrangeQuestion,
  places: Places,
  room: ArrangeRoom,
  price: (places: Places) => number,
  most: number,
): Places {
  const free = question.nodes.flatMap((node, index) => (node.isFixed ? [] : [index]));
  const spread = question.nodes.map((node) => spreadAt(node, places));
  const cost = new ArrangeCost(question, spread, room);
  const now = (): Places => {
    return new Map(
      cost.spread.flatMap(({ node, pose, x, y }) => {
        return node.isFixed ? [] : [[node.id, placeIn(node.place, pose, { x, y })] as const];
      }),
    );
  };
  const lots = lotsFrom(1);
  let least = price(places) + cost.standing();
  let seeming = cost.total();
  let laid = 0;
  for (let count = 0; laid < most && count < most * LOOKED_AT; count++) {
    const moved = tryOf(cost, free, lots);
    cost.move(moved);
    const isPromising = moved.length > 0 && cost.total() < seeming + WORTH_LAYING;
    if (isPromising && moved.every(({ index }) => cost.isClear(index))) {
      laid += 1;
      const next = price(now()) + cost.standing();
      if (next < least) {
        [least, seeming] = [next, cost.total()];
        continue;
      }
    }
    cost.moveBack();
  }
  return now();
}
