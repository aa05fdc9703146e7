import type { PartId } from "../base/ids.ts";
import { remember } from "../base/memo.ts";
import type { Amps, Share } from "../base/units.ts";
import { terminalPoint } from "../circuit/points.ts";
import { type Direction, type Flow, flowFrom, leadsTo, onward } from "./branchFlow.ts";
import { type Currents, type Way, workingWays } from "./branchWays.ts";
import { snapshotOf } from "./snapshot.ts";

/** A path of a load's current, or the part of it that no path before it takes. */
export interface BranchPath {
  readonly ways: readonly Way[];
  /** The load's part of each way's amps. */
  readonly shares: readonly Amps[];
}

/** All paths of a load: the first leads from a source through the load and back; others part from one before and join again. */
export interface BranchPaths {
  readonly amps: Amps;
  /** The elements that do the load's work. */
  readonly work: readonly Way[];
  readonly paths: readonly BranchPath[];
}

/** A way that takes less than this share of the load's current is no path of its own (our own number). */
const LEAST_SHARE: Share = 0.05;
const MOST_PATHS = 16;

/** The paths of a part's current; null where it carries none. */
export function pathsOf(currents: Currents, part: PartId): BranchPaths | null {
  const work = workingWays(currents, part);
  if (work.length === 0) return null;
  const paths: BranchPath[] = [];
  const known = new Set<Way>();
  for (const seed of work) {
    for (const path of pathsThrough(currents, seed)) {
      const left = untaken(path, known);
      if (left.ways.length === 0 || paths.length >= MOST_PATHS) continue;
      paths.push(left);
      for (const way of left.ways) known.add(way);
    }
  }
  return { amps: through(currents, work), work, paths };
}

/** Amps through some elements together: what runs on from one into the next is counted once. */
function through({ places }: Currents, ways: readonly Way[]): Amps {
  const inner = new Set(ways.map(({ to }) => places[to]!));
  const entering = ways.filter(({ from }) => !inner.has(places[from]!));
  return (entering.length > 0 ? entering : ways.slice(0, 1)).reduce((sum, { amps }) => sum + amps, 0);
}

/** How the current of one element spreads: up to where it comes from, down to where it goes back. */
export interface Spread {
  readonly up: Flow;
  readonly down: Flow;
  /** Places where it comes from a source, and where it is home again. */
  readonly returns: ReadonlySet<number>;
  readonly home: ReadonlySet<number>;
  /** The element itself begins at a source. */
  readonly isStart: boolean;
}

/** The spread of the current of one element, amps by way. */
export function spreadOf(currents: Currents, seed: Way): Spread {
  const { places } = currents;
  const returns = sourceReturns(currents);
  const up = flowFrom(currents, places[seed.from]!, seed.amps, "up", (place) => returns.has(place));
  const ends = up.ends.size > 0 ? up.ends : new Set([places[0]!]);
  const isStart = returns.has(places[seed.from]!) && up.ends.size === 0;
  const home = isStart ? new Set([places[seed.from]!]) : ends;
  const down = flowFrom(currents, places[seed.to]!, seed.amps, "down", (place) => home.has(place));
  return { up, down, returns, home, isStart };
}

/** The path through one element that takes most of its current: from a source and back. */
export function pathThrough(currents: Currents, seed: Way): readonly Way[] {
  return pathsThrough(currents, seed)[0]!.ways;
}

/** Whole paths through one element, the one with most current first. */
function pathsThrough(currents: Currents, seed: Way): readonly BranchPath[] {
  const { places } = currents;
  const { up, down, returns, home, isStart } = spreadOf(currents, seed);
  const least = LEAST_SHARE * seed.amps;
  const ups = isStart ? [[]] : sidePaths(currents, up, places[seed.from]!, "up", least, (place) => returns.has(place));
  const downs = sidePaths(currents, down, places[seed.to]!, "down", least, (place) => home.has(place));
  const whole = (above: readonly Way[], below: readonly Way[]): BranchPath => ({
    ways: [...[...above].reverse(), seed, ...below],
    shares: [
      ...[...above].reverse().map((way) => up.amps.get(way) ?? 0),
      seed.amps,
      ...below.map((way) => down.amps.get(way) ?? 0),
    ],
  });
  const [above = [], ...moreAbove] = ups;
  const [below = [], ...moreBelow] = downs;
  return [
    whole(above, below),
    ...moreAbove.map((other) => whole(other, below)),
    ...moreBelow.map((other) => whole(above, other)),
  ];
}

/** Places where a source takes its current back: terminals of batteries and alternators that are grounded. */
const sourceReturns = remember(({ rig, places }: Currents): ReadonlySet<number> => {
  const { state } = snapshotOf(rig).nodes;
  const returns = new Set([places[0]!]);
  for (const { part, kind, view } of rig.network.parts.values()) {
    if (kind.role !== "source") continue;
    for (const terminal of view.terminals) {
      const node = rig.network.nodes.get(terminalPoint(part, terminal))!;
      if (state[node] === "grounded") returns.add(places[node]!);
    }
  }
  return returns;
});

/** The paths of one side: along what takes most, then one for each way that parts from it with a share worth showing. */
function sidePaths(
  currents: Currents,
  flow: Flow,
  start: number,
  direction: Direction,
  least: Amps,
  isEnd: (place: number) => boolean,
): readonly (readonly Way[])[] {
  const share = (way: Way): Amps => flow.amps.get(way) ?? 0;
  const along = (place: number, done: readonly Way[]): readonly Way[] => {
    const ways = [...done];
    const seen = new Set([place]);
    let at = place;
    while (at === start || !isEnd(at)) {
      const next = onward(currents, at, direction).reduce<Way | null>(
        (best, way) => (share(way) > (best ? share(best) : 0) ? way : best),
        null,
      );
      if (!next) break;
      ways.push(next);
      at = leadsTo(currents, next, direction);
      if (seen.has(at)) break;
      seen.add(at);
    }
    return ways;
  };
  const paths = [along(start, [])];
  const taken = new Set(paths[0]);
  for (let next = 0; next < paths.length && paths.length < MOST_PATHS; next++) {
    const path = paths[next]!;
    path.forEach((way, index) => {
      const place = places(currents, way, direction);
      for (const other of onward(currents, place, direction)) {
        if (taken.has(other) || share(other) < least || isSide(other, way)) continue;
        const beyond = along(leadsTo(currents, other, direction), [...path.slice(0, index), other]);
        for (const each of beyond) taken.add(each);
        paths.push(beyond);
      }
    });
  }
  return paths;
}

/** The place from which a way is taken in a direction. */
function places(currents: Currents, way: Way, direction: Direction): number {
  return currents.places[direction === "up" ? way.to : way.from]!;
}

/** Two elements side by side inside one part: a coil and the resistor across it are one row. */
function isSide(one: Way, other: Way): boolean {
  return one.placed.owner === other.placed.owner && one.from === other.from && one.to === other.to;
}

/** What is left of a path without the stretches at its two ends that were taken before. */
function untaken({ ways, shares }: BranchPath, known: ReadonlySet<Way>): BranchPath {
  const first = ways.findIndex((way) => !known.has(way));
  if (first < 0) return { ways: [], shares: [] };
  const last = ways.reduce((at, way, index) => (known.has(way) ? at : index), first);
  return { ways: ways.slice(first, last + 1), shares: shares.slice(first, last + 1) };
}
