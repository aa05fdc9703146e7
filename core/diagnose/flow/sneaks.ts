import type { PartId } from "../../base/ids.ts";
import type { Amps, Share } from "../../base/units.ts";
import type { Circuit, Condition } from "../../circuit/circuit.ts";
import { pathThrough } from "../../live/branchPaths.ts";
import { type Currents, currentsOf, type Way } from "../../live/branchWays.ts";
import { Rig } from "../../live/rig.ts";
import { reach } from "../../live/settle.ts";
import type { Doing } from "../../parts/kind.ts";
import { type Change, changesIn } from "./changes.ts";
import { type Healthy, healthyOf, LEAST_FLOW, LEAST_FLOW_SHARE, type Moment, momentOf } from "./moments.ts";
import { type Opening, openingsOf } from "./openings.ts";
import { type PathStep, stepsAlong, type TurnedWire } from "./sneakPath.ts";

/** A load, or one filament of it, that gets current it should not have, or has it the other way round. */
export interface SneakLoad {
  readonly part: PartId;
  readonly doing: Doing["doing"];
  /** Amps of what should carry none, and their share of the most it carries with nothing wrong. */
  readonly amps: Amps;
  readonly share: Share;
  /** The judge's word for the whole part; null where it would pass its check. */
  readonly verdict: Change["verdict"] | null;
}

/** A way that current runs against the drawn direction, in the position where it matters most. */
export interface Sneak {
  /** What has to be open for it, any one of these: they do the same. None where nothing is wrong: it is in the design. */
  readonly openings: readonly Opening[];
  readonly condition: Condition;
  readonly loads: readonly SneakLoad[];
  /** Most amps first. */
  readonly wires: readonly TurnedWire[];
  /** From a source through what is turned and back. */
  readonly path: readonly PathStep[];
  readonly amps: Amps;
  /** Loads that should work there and are dead or weak instead. */
  readonly failing: readonly Change[];
  /** In how many of the distinct positions it is. */
  readonly positions: number;
}

/** How far a search is: `done` of `all` openings, and what was found by then, what matters most first. */
export interface SneakSearch {
  readonly done: number;
  readonly all: number;
  /** Distinct positions solved for each opening. */
  readonly positions: number;
  readonly sneaks: readonly Sneak[];
}

/** A wire that turns with less than this tells nothing to a person with a clamp (our own number). */
const LEAST_TURNED: Amps = 0.02;

/**
 * Every way current runs against the drawn direction in some position, with nothing wrong and with each ground, fuse, splice
 * leg or shared wire open. Yields after every opening, so that it can be stopped with what it has. The drawn direction is the
 * one that current takes in the function checks and scenes: a motor that reverses there may run both ways.
 */
export function* searchSneaks(circuit: Circuit): Generator<SneakSearch, void, void> {
  const healthy = healthyOf(circuit);
  const openings = [null, ...openingsOf(circuit)];
  let sneaks: readonly Sneak[] = [];
  let rig: Rig | undefined;
  for (const [index, opening] of openings.entries()) {
    rig = new Rig(circuit, opening?.faults ?? [], [], rig);
    sneaks = sneaksWith({ circuit, healthy, rig, opening }).reduce(joined, sneaks);
    sneaks = [...sneaks].sort(byWeight);
    yield { done: index + 1, all: openings.length, positions: healthy.moments.length, sneaks };
  }
}

/** All sneak paths of a circuit, what matters most first. */
export function sneaksOf(circuit: Circuit): SneakSearch {
  let last: SneakSearch = { done: 0, all: 0, positions: 0, sneaks: [] };
  for (const step of searchSneaks(circuit)) last = step;
  return last;
}

/** Adds a sneak path; one that does just the same with another opening is told with it. */
function joined(sneaks: readonly Sneak[], sneak: Sneak): readonly Sneak[] {
  const text = (each: Sneak): string =>
    JSON.stringify([
      each.condition,
      namesOf(each),
      each.amps.toFixed(2),
      each.failing.map(({ part }) => part),
      each.path,
    ]);
  const at = sneaks.findIndex((each) => each.openings.length > 0 && text(each) === text(sneak));
  if (at < 0) return [...sneaks, sneak];
  return sneaks.map((each, index) =>
    index === at ? { ...each, openings: [...each.openings, ...sneak.openings] } : each,
  );
}

interface Field {
  readonly circuit: Circuit;
  readonly healthy: Healthy;
  readonly rig: Rig;
  readonly opening: Opening | null;
}

/**
 * The sneak paths of one opening: of all positions the one that matters most, then those that reach a load which none before
 * does. The same in more positions is the same story.
 */
function sneaksWith(field: Field): readonly Sneak[] {
  const found: Sneak[] = [];
  for (const good of field.healthy.moments) {
    reach(field.rig, good.condition);
    const sneak = sneakIn(field, good);
    if (sneak) found.push(sneak);
  }
  const told = new Set<string>();
  return found.sort(byWeight).flatMap((sneak): readonly Sneak[] => {
    const isNew = reached(sneak).some((name) => !told.has(name));
    if (!isNew) return [];
    for (const name of [...sneak.loads.map(({ part }) => part), ...sneak.wires.map(({ wire }) => wire)]) told.add(name);
    const alike = found.filter((other) => reached(sneak).every((name) => reached(other).includes(name)));
    return [{ ...sneak, positions: alike.length }];
  });
}

/** What a sneak path reaches: its loads, or its wires where no load notices. */
function reached({ loads, wires }: Sneak): readonly string[] {
  return loads.length > 0 ? loads.map(({ part }) => part) : wires.map(({ wire }) => wire);
}

function namesOf(sneak: Sneak): string {
  return [...reached(sneak)].sort().join(" ");
}

/** All that is turned in a settled rig as one story, told by the load that it reaches most; null where nothing is. */
function sneakIn({ circuit, healthy, rig, opening }: Field, good: Moment): Sneak | null {
  const now = momentOf(rig, good.condition);
  const { turned, isAgainst } = turnedIn(rig, healthy, good, now);
  // Where no current runs against its direction, a relay or module has let something else run: no path of its own.
  if (!isAgainst) return null;
  const currents = currentsOf(rig);
  const changes = changesIn(circuit, healthy, good, now);
  const ways = [...turned].flatMap((index) => wayOf(currents, rig, index)).sort((one, other) => other.amps - one.amps);
  const loads = loadsIn(
    rig,
    { healthy, now, changes },
    ways.filter(({ placed }) => isLoadElement(rig, placed.owner, placed.passes)),
  );
  const lead = ways.find(({ placed }) => placed.owner === loads[0]?.part) ?? ways[0];
  if (!lead) return null;
  const isTurned = ({ placed }: Way): boolean => ways.some((each) => each.placed === placed);
  return {
    openings: opening ? [opening] : [],
    condition: good.condition,
    loads,
    wires: ways.flatMap(({ placed, amps }) =>
      rig.network.wires.has(placed.owner) ? [{ wire: placed.owner, amps }] : [],
    ),
    path: stepsAlong(rig.network, pathThrough(currents, lead), isTurned),
    amps: lead.amps,
    failing: changes.filter(({ verdict }) => verdict === "dead" || verdict === "weak"),
    positions: 1,
  };
}

/** Indexes of the elements whose current runs another way than the drawing means, or that should carry none there. */
function turnedIn(
  rig: Rig,
  healthy: Healthy,
  good: Moment,
  now: Moment,
): { readonly turned: ReadonlySet<number>; readonly isAgainst: boolean } {
  const turned = new Set<number>();
  let isAgainst = false;
  rig.network.elements.forEach(({ owner, passes, element }, index) => {
    if (element.law === "joint") return;
    const [is, was] = [now.amps[index]!, good.amps[index]!];
    const size = Math.abs(is);
    const isOtherWay = size >= LEAST_FLOW && (is > 0 ? !healthy.along[index] : !healthy.against[index]);
    if (isLoadElement(rig, owner, passes)) {
      if (size < LEAST_FLOW_SHARE * healthy.most[index]! || size < LEAST_FLOW) return;
      const isUnasked = Math.abs(was) < LEAST_FLOW_SHARE * healthy.most[index]!;
      if (isOtherWay || isUnasked) turned.add(index);
      if (isOtherWay) isAgainst = true;
    } else if (
      rig.network.wires.has(owner) &&
      isOtherWay &&
      size >= LEAST_TURNED &&
      size >= LEAST_FLOW_SHARE * healthy.most[index]!
    ) {
      turned.add(index);
      isAgainst = true;
    }
  });
  return { turned, isAgainst };
}

/** Windings, filaments, coils and the like: what does work, or pulls something in. */
function isLoadElement(rig: Rig, owner: string, passes: string): boolean {
  const role = rig.network.parts.get(owner)?.kind.role;
  return passes === "load" && (role === "load" || role === "control");
}

function wayOf(currents: Currents, rig: Rig, index: number): readonly Way[] {
  const placed = rig.network.elements[index]!;
  const ends = [placed.element.a, placed.element.b];
  return ends
    .flatMap((node) => currents.out(currents.places[node]!).filter((way) => way.placed === placed && way.from === node))
    .slice(0, 1);
}

function loadsIn(
  rig: Rig,
  { healthy, now, changes }: { readonly healthy: Healthy; readonly now: Moment; readonly changes: readonly Change[] },
  ways: readonly Way[],
): readonly SneakLoad[] {
  const found = new Map<PartId, SneakLoad>();
  for (const { placed, amps } of ways) {
    const part = placed.owner;
    const most = healthy.most[rig.network.elements.indexOf(placed)]!;
    const share = most > 0 ? amps / most : 1;
    if ((found.get(part)?.share ?? 0) >= share) continue;
    const verdict = changes.find((change) => change.part === part)?.verdict ?? null;
    found.set(part, { part, doing: now.doing.get(part)?.doing ?? "off", amps, share, verdict });
  }
  const rank = ({ verdict, share }: SneakLoad): number =>
    (verdict === "wrong" || verdict === "strong" ? 2 : verdict === null ? 1 : 0) + Math.min(share, 0.99);
  return [...found.values()].sort((one, other) => rank(other) - rank(one));
}

/** A position that takes more throwing is met less often, and harder to try (our own number). */
const THROW_COSTS = 0.2;

/** How much a sneak path matters: what runs that should not first, then what glows, then wires that turn; in the design above all. */
function weightOf({ openings, condition, loads, failing, amps }: Sneak): number {
  const wrong = loads.filter(({ verdict }) => verdict === "wrong" || verdict === "strong");
  const step = wrong.length > 0 ? 4 : loads.length > 0 ? 2 : 0;
  const level = Math.min(1, Math.max(0, ...loads.map(({ share }) => share)));
  const thrown = Object.keys(condition.set ?? {}).length;
  return (
    step +
    level -
    THROW_COSTS * thrown +
    (openings.length === 0 ? 1 : 0) +
    Math.min(0.5, failing.length / 20) +
    Math.min(0.4, amps / 100)
  );
}

function byWeight(one: Sneak, other: Sneak): number {
  return weightOf(other) - weightOf(one);
}
