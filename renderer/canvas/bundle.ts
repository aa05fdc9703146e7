import type { PartId, PointId } from "../../core/base/ids.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { TerminalSpot } from "../../core/circuit/placeSymbol.ts";
import type { Spot } from "../../core/drawing/mark.ts";
import type { Pair } from "../../core/edit/connectorSides.ts";
import { wireBetween, wireEndOf } from "../../core/edit/wireEnds.ts";
import type { Standing } from "./standing.ts";

// Several wires drawn as one: terminals that are gathered, and where they are led to.

/** What lies on the page on which wires are drawn. */
export interface Lying {
  readonly circuit: Circuit;
  readonly standing: Standing;
}

/** The terminals in the box between two spots, in the order in which they lie along its longer way. */
export function terminalsIn(lying: Lying, one: Spot, other: Spot): readonly PointId[] {
  const [left, right] = [Math.min(one.x, other.x), Math.max(one.x, other.x)];
  const [top, bottom] = [Math.min(one.y, other.y), Math.max(one.y, other.y)];
  return inOrder(takers(lying).filter(([, { x, y }]) => x >= left && x <= right && y >= top && y <= bottom));
}

/** The terminals of a part on the side that is nearest to a spot, in the order in which they lie. */
export function terminalsBeside(lying: Lying, part: PartId, spot: Spot): readonly PointId[] {
  const own = takers(lying).filter(([, at]) => at.part === part);
  const distance = ([, { x, y }]: Taker): number => Math.hypot(x - spot.x, y - spot.y);
  const nearest = own.toSorted((a, b) => distance(a) - distance(b))[0];
  return nearest ? inOrder(own.filter(([, { side }]) => side === nearest[1].side)) : [];
}

/** With a point gathered it is let go, without it comes to the end. */
export function gatheredWith(gathered: readonly PointId[], point: PointId): readonly PointId[] {
  return gathered.includes(point) ? gathered.filter((each) => each !== point) : [...gathered, point];
}

/**
 * Where wires from the gathered terminals go when the first is led to this one: the others to those that follow it on the
 * same side of its part; all to this one where it is alone there, as on a ground. Where they are more, the last go nowhere.
 */
export function ledTo(lying: Lying, gathered: readonly PointId[], target: PointId): readonly Pair[] {
  const at = lying.standing.points.get(target);
  if (!at || gathered.includes(target)) return [];
  const beside = takers(lying).filter(
    ([point, spot]) => spot.part === at.part && spot.side === at.side && !gathered.includes(point),
  );
  const run = inOrder(beside);
  const from = run.slice(run.indexOf(target));
  return pairsTo(lying.circuit, gathered, run.length === 1 ? gathered.map(() => target) : from);
}

/** Wires from the gathered terminals to others, one by one in order, but for those that are there already. */
export function pairsTo(circuit: Circuit, gathered: readonly PointId[], others: readonly PointId[]): readonly Pair[] {
  return gathered.flatMap((from, index): readonly Pair[] => {
    const to = others[index];
    return to === undefined || to === from || wireBetween(circuit, from, to) ? [] : [{ from, to }];
  });
}

type Taker = readonly [PointId, TerminalSpot];

/** Terminals to which a wire can go. */
function takers({ circuit, standing }: Lying): readonly Taker[] {
  return [...standing.points].filter(([point]) => wireEndOf(circuit, point).ok);
}

/** In the order in which they lie along the longer way of the box around them. */
function inOrder(points: readonly Taker[]): readonly PointId[] {
  const [xs, ys] = [points.map(([, { x }]) => x), points.map(([, { y }]) => y)];
  const isWide = Math.max(...xs) - Math.min(...xs) > Math.max(...ys) - Math.min(...ys);
  const along = ([, { x, y }]: Taker): number => (isWide ? x : y);
  const aside = ([, { x, y }]: Taker): number => (isWide ? y : x);
  return points.toSorted((a, b) => along(a) - along(b) || aside(a) - aside(b)).map(([point]) => point);
}
