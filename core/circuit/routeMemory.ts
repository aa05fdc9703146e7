import type { WireId } from "../base/ids.ts";
import type { Spot } from "../drawing/mark.ts";
import type { Bounds } from "../drawing/measure.ts";
import type { RouteEnd } from "./routeEnds.ts";
import type { RouteGrid } from "./routeGrid.ts";
import type { RouteWire } from "./routePage.ts";
import type { Found, RouteSearch } from "./routeSearch.ts";
import type { Way } from "./routeTaken.ts";
import { TileTimes } from "./routeTiles.ts";

/** One look for the way of a wire: what came of it, and the tiles of the grid that it depended on. */
export interface Look {
  readonly found: Found | null;
  readonly tiles: readonly number[];
}

/** What became of a wire in a laying. */
export interface Trail {
  /** Its place among the wires of the page. */
  readonly index: number;
  readonly wire: RouteWire;
  /** Bodies at its ends. */
  readonly bodies: readonly [Bounds | undefined, Bounds | undefined];
  /** Every look in the order taken; none for a wire whose bends are set. */
  readonly looks: readonly Look[];
  /** It found no way of its own at first, or was taken up for one that did not: where others lie decided its turn too. */
  readonly isTroubled: boolean;
  readonly way: Way | null;
  /** Every way that it had while the laying went on. */
  readonly ways: readonly Way[];
  readonly corners: readonly Spot[] | null;
}

/** A laying that is kept, so that the next takes from it all that cannot have changed. */
export interface RouteMemory {
  readonly grid: RouteGrid;
  /** Its arrays go on to the next laying. */
  readonly search: RouteSearch;
  readonly trails: ReadonlyMap<WireId, Trail>;
}

/** The tiles where two grids of one size differ, marked with time 1; null where their sizes or places do. */
export function differences(one: RouteGrid, other: RouteGrid): TileTimes | null {
  const isAlike =
    one.left === other.left && one.top === other.top && one.columns === other.columns && one.rows === other.rows;
  if (!isAlike) return null;
  const times = new TileTimes(one);
  for (let node = 0; node < one.blocked.length; node++) {
    if (one.blocked[node] !== other.blocked[node] || one.toll[node] !== other.toll[node]) times.mark(node, 1);
  }
  return times;
}

/**
 * The trails that still hold, by the new places of their wires: the wire, its bends and the bodies at its ends are the
 * same, it had no trouble, and it comes in the same order among those that are left.
 */
export function trailsLeft(
  { trails }: RouteMemory,
  wires: readonly RouteWire[],
  bodies: readonly Bounds[],
): (Trail | null)[] {
  let last = -1;
  return wires.map((wire) => {
    const trail = trails.get(wire.id);
    if (trail === undefined || trail.isTroubled || trail.index < last || !isSameWire(trail, wire, bodies)) return null;
    last = trail.index;
    return trail;
  });
}

function isSameWire({ wire: before, bodies: [from, to] }: Trail, wire: RouteWire, bodies: readonly Bounds[]): boolean {
  return (
    isSameEnd(before.from, wire.from) &&
    isSameEnd(before.to, wire.to) &&
    isSameBody(from, bodies[wire.from.body]) &&
    isSameBody(to, bodies[wire.to.body]) &&
    areSameBends(before.bends, wire.bends)
  );
}

function isSameEnd(one: RouteEnd, other: RouteEnd): boolean {
  return one.spot.x === other.spot.x && one.spot.y === other.spot.y && one.side === other.side;
}

function isSameBody(one: Bounds | undefined, other: Bounds | undefined): boolean {
  if (one === undefined || other === undefined) return one === other;
  return one.left === other.left && one.top === other.top && one.right === other.right && one.bottom === other.bottom;
}

function areSameBends(one: RouteWire["bends"], other: RouteWire["bends"]): boolean {
  if (one === other || one === undefined || other === undefined) return one === other;
  return one.length === other.length && one.every(([x, y], i) => x === other[i]![0] && y === other[i]![1]);
}

/** True where two looks came to the same way at the same cost. */
export function isSameFound(one: Found | null, other: Found | null): boolean {
  if (one === other || one === null || other === null) return one === other;
  return one.cost === other.cost && isSameWay(one.way, other.way);
}

/** True where two ways run over the same nodes. */
export function isSameWay(one: Way, other: Way): boolean {
  return one === other || (one.length === other.length && one.every((node, i) => node === other[i]));
}
