import type { Pixel, Size } from "./viewport.ts";

/** Something that is likely to be pressed next, and how much it costs to cover it. */
export interface Wanted {
  readonly at: Pixel;
  readonly weight: number;
}

/** Room to the edges of the window, and at its top for the tools, pixels. */
const EDGE = 12;
const TOOLS = 60;
/** How near a press may fall to what it means, pixels. */
const REACH = 24;

/**
 * The place for a card that stays while work goes on: in a corner or at the middle of an edge of the window, where it covers
 * least of what is wanted next, and among those the farthest from where the hand is. `scale` is the size of the tools.
 */
export function dockPlace(hand: Pixel, card: Size, window: Size, wanted: readonly Wanted[], scale: number): Pixel {
  const [left, right] = [EDGE, Math.max(EDGE, window.width - card.width - EDGE)];
  const bottom = Math.max(EDGE, window.height - card.height - EDGE);
  const top = Math.min(TOOLS * scale, bottom);
  const [middle, centre] = [(left + right) / 2, (top + bottom) / 2];
  const places: readonly Pixel[] = [
    ...[left, middle, right].flatMap((x) => [top, bottom].map((y) => ({ x, y }))),
    ...[left, right].map((x) => ({ x, y: centre })),
  ];
  const priced = places.map((place) => ({
    place,
    cost: covered(place, card, [...wanted, { at: hand, weight: HAND }]),
    away: Math.hypot(place.x + card.width / 2 - hand.x, place.y + card.height / 2 - hand.y),
  }));
  priced.sort((one, other) => one.cost - other.cost || other.away - one.away);
  return priced[0]!.place;
}

/** What covering the hand itself costs. */
const HAND = 100;

function covered({ x, y }: Pixel, { width, height }: Size, wanted: readonly Wanted[]): number {
  return wanted.reduce(
    (sum, { at, weight }) =>
      at.x > x - REACH && at.x < x + width + REACH && at.y > y - REACH && at.y < y + height + REACH
        ? sum + weight
        : sum,
    0,
  );
}
