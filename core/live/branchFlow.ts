import type { Amps } from "../base/units.ts";
import type { Currents, Way } from "./branchWays.ts";

/** How one load's current spreads to one side of it: its part of every way, and the places where it ends. */
export interface Flow {
  readonly amps: ReadonlyMap<Way, Amps>;
  readonly ends: ReadonlySet<number>;
}

/** A side of a load: against the current to where it comes from, or with it to where it goes. */
export type Direction = "up" | "down";

/** The ways that go on from a place in a direction, and the place that such a way leads to. */
export function onward({ into, out }: Currents, place: number, direction: Direction): readonly Way[] {
  return direction === "up" ? into(place) : out(place);
}

/** The place that a way leads to in a direction. */
export function leadsTo({ places }: Currents, way: Way, direction: Direction): number {
  return places[direction === "up" ? way.from : way.to]!;
}

/**
 * Spreads the amps of a load from one of its ends. Where ways part, each takes as much of the load's current as it takes
 * of all the current there: no one can tell one ampere from another, so this share is our convention. Ends at the places
 * that `isEnd` names.
 */
export function flowFrom(
  currents: Currents,
  start: number,
  amps: Amps,
  direction: Direction,
  isEnd: (place: number) => boolean,
): Flow {
  const shares = new Map<Way, Amps>();
  const ends = new Set<number>();
  const arrived = new Map<number, Amps>([[start, amps]]);
  for (const place of inOrder(currents, start, direction, isEnd)) {
    const here = arrived.get(place) ?? 0;
    if (isEnd(place) && place !== start) {
      ends.add(place);
      continue;
    }
    const ways = onward(currents, place, direction);
    const all = ways.reduce((sum, way) => sum + way.amps, 0);
    for (const way of ways) {
      const share = (here * way.amps) / all;
      shares.set(way, share);
      const next = leadsTo(currents, way, direction);
      arrived.set(next, (arrived.get(next) ?? 0) + share);
    }
  }
  return { amps: shares, ends };
}

/** Places reached from a start, each after all that lead to it (depth first, last left first put). */
function inOrder(
  currents: Currents,
  start: number,
  direction: Direction,
  isEnd: (place: number) => boolean,
): readonly number[] {
  const order: number[] = [];
  const seen = new Set<number>();
  const visit = (place: number): void => {
    seen.add(place);
    if (!isEnd(place) || place === start)
      for (const way of onward(currents, place, direction)) {
        const next = leadsTo(currents, way, direction);
        if (!seen.has(next)) visit(next);
      }
    order.push(place);
  };
  visit(start);
  return order.reverse();
}
