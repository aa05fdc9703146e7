import type { PartId } from "../../base/ids.ts";
import { type Outcome, ok } from "../../base/outcome.ts";
import type { Amps } from "../../base/units.ts";
import type { Circuit, Condition } from "../../circuit/circuit.ts";
import { isInLine, partAt } from "../../circuit/points.ts";
import { spreadOf } from "../../live/branchPaths.ts";
import { type Currents, currentsOf, type Way, workingWays } from "../../live/branchWays.ts";
import { isIdle } from "../../live/live.ts";
import type { Placed } from "../../live/network.ts";
import { Rig } from "../../live/rig.ts";
import { reach } from "../../live/settle.ts";
import { kindOf } from "../../parts/catalogue.ts";
import { type Effect, effectsOf } from "./changes.ts";
import { fuseLimit, type Limit, wireLimit } from "./limits.ts";
import { healthyOf } from "./moments.ts";
import { type Opening, openingOf } from "./openings.ts";
import { offRest, oneThrown } from "./positions.ts";

/** A load whose current runs through the place, where it runs most. */
export interface Sharer {
  readonly part: PartId;
  /** The load's own part of the amps there. */
  readonly amps: Amps;
  readonly condition: Condition;
  /** In how many of the distinct positions it is. */
  readonly positions: number;
}

/** What hangs on a fuse, splice, ground, connector, pin or wire. */
export interface Shares {
  readonly opening: Opening;
  /** Most amps first. */
  readonly sharers: readonly Sharer[];
  /** The most amps that were found through the place, and in which condition. */
  readonly most: { readonly amps: Amps; readonly condition: Condition };
  /** What every sharer takes at its own most, added: more than can run at once where controls exclude one another. */
  readonly sum: Amps;
  /** At the most amps: the fuse itself and the wires at the place, tightest first. */
  readonly limits: readonly Limit[];
  /** What goes dead, weak or odd when it opens. */
  readonly effects: readonly Effect[];
}

/** Less of a load's current than this through a place is not worth a row: a meter's and a module's leakage. */
const LEAST_SHARED: Amps = 0.01;
/** Rounds of throwing one control at a time in search of the worst case. */
const MOST_ROUNDS = 6;

/** Every load whose current runs through a place in some position, and what happens when it opens. Refuses as `openingOf`. */
export function sharesOf(circuit: Circuit, target: string): Outcome<Shares> {
  const opened = openingOf(circuit, target);
  if (!opened.ok) return opened;
  const opening = opened.value;
  const rig = new Rig(circuit);
  const place = elementsOf(rig, opening);
  const found = new Map<PartId, Sharer>();
  let most: Shares["most"] = { amps: 0, condition: {} };
  for (const { condition, doing } of healthyOf(circuit).moments) {
    reach(rig, condition);
    const currents = currentsOf(rig);
    const amps = throughPlace(rig, place);
    if (amps > most.amps) most = { amps, condition };
    if (amps < LEAST_SHARED) continue;
    for (const [part, does] of doing) {
      const role = kindOf(partAt(circuit, part)?.kind ?? "")?.role;
      if (isIdle(does) || role === "source" || role === "protection" || role === "join") continue;
      const own = shareThrough(currents, part, place);
      if (own < LEAST_SHARED) continue;
      const known = found.get(part);
      const positions = (known?.positions ?? 0) + 1;
      found.set(
        part,
        known && known.amps >= own - 1e-6 ? { ...known, positions } : { part, amps: own, condition, positions },
      );
    }
  }
  most = worstFrom(circuit, rig, place, most);
  const sharers = [...found.values()].sort((one, other) => other.amps - one.amps);
  reach(rig, most.condition);
  return ok({
    opening,
    sharers,
    most,
    sum: sharers.reduce((sum, { amps }) => sum + amps, 0),
    limits: limitsAt(circuit, rig, opening, place),
    effects: effectsOf(circuit, opening.faults),
  });
}

/** Elements of a place, each the way round that leads into it. */
function elementsOf({ network }: Rig, { faults }: Opening): readonly Placed[] {
  const indexes = faults.flatMap(({ target, mode }): readonly number[] => {
    const wire = network.wires.get(target);
    if (wire) return [wire[0]];
    const part = network.parts.get(target);
    if (part)
      return [...part.elements].flatMap(([key, index]) =>
        mode.includes("leg") && !mode.startsWith(`${key}-`) ? [] : [index],
      );
    return [pinIndex(network, target)];
  });
  return indexes
    .filter((index) => network.elements[index]!.element.law !== "joint")
    .map((index) => network.elements[index]!);
}

/** The element of a place in a connector: `X5-6`, or `X30-1` of an in-line joint. */
function pinIndex({ parts, pins, circuit }: Rig["network"], cavity: string): number {
  const at = cavity.lastIndexOf("-");
  const [id, place] = [cavity.slice(0, at), cavity.slice(at + 1)];
  const joint = parts.get(id);
  if (joint && isInLine(joint.part)) return joint.elements.get(place)!;
  const carried = Object.keys(circuit.connectors.find((each) => each.id === id)?.cavities ?? {});
  return pins.get(id)![carried.indexOf(place)]!;
}

/** Amps through a place: what comes in by all its elements, or what leaves by them, whichever is more. */
function throughPlace(rig: Rig, place: readonly Placed[]): Amps {
  const amps = place.map((placed) => ampsOf(rig, placed));
  const sum = (list: readonly Amps[]): Amps => list.reduce((all, each) => all + Math.abs(each), 0);
  return Math.max(sum(amps.filter((each) => each > 0)), sum(amps.filter((each) => each < 0)));
}

function ampsOf({ network, isOpen, solver }: Rig, placed: Placed): Amps {
  const index = network.elements.indexOf(placed);
  return isOpen[index] ? 0 : solver.amps(index);
}

/** A load's own amps through a place, by the share that its current has of all that runs there. */
function shareThrough(currents: Currents, part: PartId, place: readonly Placed[]): Amps {
  let forth = 0;
  let back = 0;
  const count = (way: Way, amps: Amps): void => {
    if (!place.includes(way.placed)) return;
    if (way.from === way.placed.element.a) forth += amps;
    else back += amps;
  };
  for (const seed of workingWays(currents, part)) {
    const { up, down } = spreadOf(currents, seed);
    for (const [way, amps] of up.amps) count(way, amps);
    for (const [way, amps] of down.amps) count(way, amps);
  }
  return Math.max(forth, back);
}

/** Throws one control after the other as long as that brings more amps through the place. */
function worstFrom(circuit: Circuit, rig: Rig, place: readonly Placed[], from: Shares["most"]): Shares["most"] {
  let most = from;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const before = most;
    for (const condition of oneThrown(circuit, before.condition)) {
      reach(rig, condition);
      const amps = throughPlace(rig, place);
      if (amps > most.amps + LEAST_SHARED) most = { amps, condition };
    }
    if (most === before) break;
  }
  return { ...most, condition: { ...most.condition, set: Object.fromEntries(offRest(circuit, most.condition)) } };
}

/** The fuse itself and the wires that end at the place, in the rig's present condition, tightest first. */
function limitsAt(circuit: Circuit, rig: Rig, { target }: Opening, place: readonly Placed[]): readonly Limit[] {
  const fuse = fuseLimit(circuit, target, throughPlace(rig, place));
  const nodes = new Set(place.flatMap(({ element }) => [element.a, element.b]));
  const wires = [...rig.network.wires].flatMap(([id, [index]]): readonly Limit[] => {
    const placed = rig.network.elements[index]!;
    const isHere = place.includes(placed) || nodes.has(placed.element.a) || nodes.has(placed.element.b);
    const amps = ampsOf(rig, placed);
    const limit = isHere && Math.abs(amps) >= LEAST_SHARED ? wireLimit(circuit, id, amps) : null;
    return limit ? [limit] : [];
  });
  const tight = (limit: Limit): number => limit.amps / limit.allowed;
  return [...(fuse ? [fuse] : []), ...wires.sort((one, other) => tight(other) - tight(one))];
}
