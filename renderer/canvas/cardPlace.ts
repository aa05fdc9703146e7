import type { Pixel, Size } from "./viewport.ts";

/** A box in the window, pixels. */
export interface PixelBox {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Where a card stands, on which side of it the leader leaves, and how far along that side. */
export interface CardPlace {
  readonly left: number;
  readonly top: number;
  readonly leader: "right" | "left" | "bottom" | "top";
  readonly along: number;
}

/** Length of the leader, room to the edge of the window, and from a corner of the card to its leader. */
export const LEADER = 34;
const EDGE = 8;
const FROM_CORNER = 20;
/** Where the leader leaves an upright side: at the height of the title. */
const AT_TITLE = 53;

/**
 * The place for a card beside the spot it explains: on the side where it covers least of what it speaks of. `keepClear`
 * are boxes with the weight that covering each costs.
 */
export function cardPlace(
  anchor: Pixel,
  card: Size,
  window: Size,
  keepClear: readonly { readonly box: PixelBox; readonly weight: number }[],
): CardPlace {
  let best: { readonly place: CardPlace; readonly cost: number } | null = null;
  for (const place of placesRound(anchor, card, window)) {
    const box = { ...place, right: place.left + card.width, bottom: place.top + card.height };
    const covered = keepClear.reduce((sum, each) => sum + each.weight * shared(box, each.box), 0);
    const cost = covered + outside(box, window) * 1000;
    if (best === null || cost < best.cost - 1e-6) best = { place, cost };
  }
  return best!.place;
}

/** Left and right of the spot, then over and under it; each pushed along until the card is in the window. */
function placesRound({ x, y }: Pixel, card: Size, window: Size): readonly CardPlace[] {
  const beside = [AT_TITLE, card.height - FROM_CORNER, card.height / 2].map((wanted) => {
    const top = within(y - wanted, EDGE, window.height - EDGE - card.height);
    return { top, along: within(y - top, FROM_CORNER, card.height - FROM_CORNER) };
  });
  const over = [card.width / 2, FROM_CORNER, card.width - FROM_CORNER].map((wanted) => {
    const left = within(x - wanted, EDGE, window.width - EDGE - card.width);
    return { left, along: within(x - left, FROM_CORNER, card.width - FROM_CORNER) };
  });
  return [
    ...beside.map(({ top, along }) => ({ left: x - LEADER - card.width, top, along, leader: "right" as const })),
    ...beside.map(({ top, along }) => ({ left: x + LEADER, top, along, leader: "left" as const })),
    ...over.map(({ left, along }) => ({ left, top: y - LEADER - card.height, along, leader: "bottom" as const })),
    ...over.map(({ left, along }) => ({ left, top: y + LEADER, along, leader: "top" as const })),
  ];
}

function within(value: number, least: number, most: number): number {
  return Math.max(least, Math.min(most, value));
}

/** Area that two boxes share, square pixels. */
function shared(one: PixelBox, other: PixelBox): number {
  const width = Math.min(one.right, other.right) - Math.max(one.left, other.left);
  const height = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top);
  return Math.max(0, width) * Math.max(0, height);
}

/** How far a box stands out of the window, pixels. */
function outside(box: PixelBox, window: Size): number {
  return (
    Math.max(0, -box.left) +
    Math.max(0, -box.top) +
    Math.max(0, box.right - window.width) +
    Math.max(0, box.bottom - window.height)
  );
}
