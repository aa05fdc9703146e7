import type { GridUnits, Share } from "../base/units.ts";
import type { Circuit, Page, Wire } from "../circuit/circuit.ts";
import { waysOn } from "../circuit/sheetLayout.ts";
import type { WireWay } from "../circuit/sheetWire.ts";
import type { Spot } from "../drawing/mark.ts";
import { pathLength, spotAlong } from "../drawing/path.ts";
import type { Bends } from "./setBends.ts";
import { pageWith } from "./wireEnds.ts";

/** A wire as it lies on its page, from its first end to its second, and the other wires that lie on that page. */
export interface WirePath {
  readonly page: Page;
  readonly corners: readonly Spot[];
  readonly length: GridUnits;
  readonly others: readonly Pick<WireWay, "wire" | "corners">[];
}

/** The way of a wire on its page as the sheet lays it; null where it is not drawn in one piece. */
export function pathOf(circuit: Circuit, wire: Wire): WirePath | null {
  const page = pageWith(circuit, [wire.from, wire.to]);
  const ways = page ? waysOn(circuit, page) : [];
  const corners = ways.find((way) => way.wire.id === wire.id && way.end === undefined)?.corners;
  if (!page || !corners) return null;
  return { page, corners, length: pathLength(corners), others: ways.filter((way) => way.wire.id !== wire.id) };
}

/** How far along a path, from its first spot, the place nearest to a spot lies. */
export function nearestAlong(corners: readonly Spot[], { x, y }: Spot): GridUnits {
  let [nearest, best, passed] = [0, Number.POSITIVE_INFINITY, 0];
  for (let index = 1; index < corners.length; index++) {
    const [from, to] = [corners[index - 1]!, corners[index]!];
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    const ahead = length === 0 ? 0 : ((x - from.x) * (to.x - from.x) + (y - from.y) * (to.y - from.y)) / length;
    const along = Math.min(Math.max(ahead, 0), length);
    const share: Share = length === 0 ? 0 : along / length;
    const gap = Math.hypot(from.x + (to.x - from.x) * share - x, from.y + (to.y - from.y) * share - y);
    if (gap < best) [nearest, best] = [passed + along, gap];
    passed += length;
  }
  return nearest;
}

/** The bends of the two halves of a wire that is cut so far along its path; what lies within `clear` of the cut is left out. */
export function bendsCut(
  { corners }: WirePath,
  bends: Bends,
  at: GridUnits,
  clear: GridUnits,
): readonly [Bends, Bends] {
  const places = bends.map((bend) => ({ bend, along: nearestAlong(corners, { x: bend[0], y: bend[1] }) }));
  return [
    places.filter(({ along }) => along < at - clear).map(({ bend }) => bend),
    places.filter(({ along }) => along > at + clear).map(({ bend }) => bend),
  ];
}

/** The spot so far along a path, and the spots one unit before and after it. */
export function aroundAlong(
  corners: readonly Spot[],
  at: GridUnits,
): { readonly [K in "back" | "spot" | "ahead"]: Spot } {
  const [back, spot, ahead] = [at - 1, at, at + 1].map((length) => spotAlong(corners, length).at);
  return { back: back!, spot: spot!, ahead: ahead! };
}
