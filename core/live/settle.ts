import type { PartId } from "../base/ids.ts";
import type { Amps, Seconds } from "../base/units.ts";
import type { Condition } from "../circuit/circuit.ts";
import { controlsOf } from "../circuit/points.ts";
import type { FuseFamily } from "../trade/fuses.ts";
import { MELTS_ABOVE, MELTS_ABOVE_WHILE_HELD, type MeltSeconds, meltWindow } from "../trade/meltWindow.ts";
import type { PlacedPart } from "./network.ts";
import type { Rig } from "./rig.ts";

const MOST_PASSES = 64;

/** Something that happened while the circuit came to rest. */
export type Happening =
  | {
      readonly what: "melted";
      readonly part: PartId;
      readonly amps: Amps;
      readonly least: Seconds;
      readonly most: MeltSeconds;
    }
  /** Over its rating, but only for as long as a spring-back position is held. */
  | {
      readonly what: "may-melt";
      readonly part: PartId;
      readonly amps: Amps;
      readonly least: Seconds;
      readonly most: MeltSeconds;
    }
  | { readonly what: "chatters"; readonly parts: readonly PartId[] }
  | { readonly what: "order-dependent"; readonly parts: readonly PartId[] }
  | { readonly what: "not-solved"; readonly residualAmps: Amps };

/** How a circuit came to rest. */
export interface Settled {
  readonly calm: boolean;
  readonly happenings: readonly Happening[];
  /** The states it goes round in while it chatters: one map of part to state for each. */
  readonly round: readonly ReadonlyMap<PartId, string>[];
}

/**
 * Brings a rig to rest: solves, lets every relay, breaker, flasher and module look, and repeats until none moves. All
 * move at once; where that goes round, one at a time from the same start. Then the fuse with the smallest gate time melts
 * and it starts over. `beforeMelt` is called once, with the circuit still whole.
 */
export function settle(rig: Rig, beforeMelt: () => void = () => {}): Settled {
  const happenings: Happening[] = [];
  for (let melts = 0; ; melts++) {
    const { calm, moved, round } = untilStill(rig);
    if (!calm) {
      const solved = rig.solve();
      if (!solved.converged) happenings.push({ what: "not-solved", residualAmps: solved.residualAmps });
      else happenings.push({ what: "chatters", parts: moved });
      return { calm: false, happenings, round };
    }
    if (moved.length > 0) happenings.push({ what: "order-dependent", parts: moved });
    const hot = hottestFuse(rig);
    if (!hot) return { calm: true, happenings, round: [] };
    if (hot.share <= (rig.isHeld() ? MELTS_ABOVE_WHILE_HELD : MELTS_ABOVE)) {
      happenings.push({ what: "may-melt", ...hot.event });
      return { calm: true, happenings, round: [] };
    }
    if (melts === 0) beforeMelt();
    happenings.push({ what: "melted", ...hot.event });
    rig.enter(hot.placed, "melted");
  }
}

interface Still {
  readonly calm: boolean;
  /** Parts still moving where it is not calm, or parts whose order decided where it is. */
  readonly moved: readonly PartId[];
  readonly round: readonly ReadonlyMap<PartId, string>[];
}

const CALM: Still = { calm: true, moved: [], round: [] };
const LOST: Still = { calm: false, moved: [], round: [] };

function untilStill(rig: Rig): Still {
  // Most throws move nothing else: what remembers the round is made when something does.
  let seen: Map<string, number> | null = null;
  const history: (readonly string[])[] = [];
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    if (!rig.solve().converged) return LOST;
    const moves = wanted(rig);
    if (moves.length === 0) return CALM;
    const states = statesOfMovable(rig);
    const key = states.join("|");
    seen ??= new Map();
    const before = seen.get(key);
    if (before !== undefined) return oneAtATime(rig, allStates(rig, history[0]!), roundOf(rig, history.slice(before)));
    seen.set(key, pass);
    history.push(states);
    for (const [placed, state] of moves) rig.enter(placed, state);
  }
  const round = roundOf(rig, history);
  return { calm: false, moved: movers(round), round };
}

/** The states of the parts that move by themselves, in their order: all that changes while a circuit comes to rest. */
function statesOfMovable({ movable, states }: Rig): readonly string[] {
  return movable.map(({ part }) => states.get(part.id)!);
}

/** The states of all parts while those that move stood so. */
function allStates(rig: Rig, moving: readonly string[]): ReadonlyMap<PartId, string> {
  return new Map([...rig.statesNow(), ...rig.movable.map(({ part }, at) => [part.id, moving[at]!] as const)]);
}

function roundOf(rig: Rig, history: readonly (readonly string[])[]): readonly ReadonlyMap<PartId, string>[] {
  return history.map((moving) => allStates(rig, moving));
}

/** Relays that race: one moves, all look again. What still goes round this way chatters. */
function oneAtATime(
  rig: Rig,
  start: ReadonlyMap<PartId, string>,
  round: readonly ReadonlyMap<PartId, string>[],
): Still {
  const racing = movers(round);
  if (racing.length < 2) return { calm: false, moved: racing, round };
  restore(rig, start);
  const seen = new Set<string>();
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    if (!rig.solve().converged) return LOST;
    const key = statesOfMovable(rig).join("|");
    if (seen.has(key)) break;
    seen.add(key);
    const first = wanted(rig)[0];
    if (!first) return { calm: true, moved: racing, round: [] };
    rig.enter(first[0], first[1]);
  }
  return { calm: false, moved: racing, round };
}

/** Puts every part into the state a map gives it. */
export function restore(rig: Rig, states: ReadonlyMap<PartId, string>): void {
  for (const placed of rig.changeable) rig.enter(placed, states.get(placed.part.id) ?? placed.kind.start);
}

const NO_MOVES: (readonly [PlacedPart, string])[] = [];

/** Parts that want to move, with the state each wants. */
function wanted(rig: Rig): readonly (readonly [PlacedPart, string])[] {
  let moves: (readonly [PlacedPart, string])[] = NO_MOVES;
  for (const placed of rig.movable) {
    const state = rig.states.get(placed.part.id)!;
    const next = placed.kind.next(placed.view, state, rig.sees(placed), rig.around(placed));
    if (next === state) continue;
    if (moves === NO_MOVES) moves = [];
    moves.push([placed, next]);
  }
  return moves;
}

function movers(history: readonly ReadonlyMap<PartId, string>[]): readonly PartId[] {
  const first = history[0];
  if (!first) return [];
  return [...first.keys()].filter((id) => history.some((states) => states.get(id) !== first.get(id)));
}

interface Hot {
  readonly placed: PlacedPart;
  readonly share: number;
  readonly event: { readonly part: PartId; readonly amps: Amps; readonly least: Seconds; readonly most: MeltSeconds };
}

/** The overloaded fuse (or fused jumper) whose gate time is smallest, or null where every one is within its rating. */
function hottestFuse(rig: Rig): Hot | null {
  let hottest: Hot | null = null;
  for (const { placed, element, rating } of rig.meltable) {
    const amps = Math.abs(rig.solver.amps(element));
    if (amps <= MELTS_ABOVE * rating) continue;
    const { part, view } = placed;
    if (rig.states.get(part.id) === "melted") continue;
    const { least, most } = meltWindow(view.word("family") as FuseFamily, rating, amps);
    const hot: Hot = { placed, share: amps / rating, event: { part: part.id, amps, least, most } };
    if (!hottest || isSooner(hot, hottest)) hottest = hot;
  }
  return hottest;
}

/** A heavier overload counts from here: two fuses in a row carry the same but for a meter's microamps. */
const HEAVIER = 1.001;

/** Whether a fuse melts before another: by the least time of its gate, then the most, then the heavier overload. */
function isSooner(hot: Hot, other: Hot): boolean {
  const most = ({ event }: Hot): Seconds => (event.most === "never" ? Number.POSITIVE_INFINITY : event.most);
  if (hot.event.least !== other.event.least) return hot.event.least < other.event.least;
  if (most(hot) !== most(other)) return most(hot) < most(other);
  return hot.share > HEAVIER * other.share;
}

/**
 * Brings a rig to a condition from rest: relays released, then thrown in the order written, settled after each. Fuses
 * are good but for those that had melted before.
 */
export function reach(
  rig: Rig,
  condition: Condition,
  beforeMelt?: () => void,
  melted: readonly PartId[] = [],
): Settled {
  rig.toRest();
  for (const id of melted) rig.enter(rig.network.parts.get(id)!, "melted");
  return moveTo(rig, condition, beforeMelt);
}

/** Goes on from where the rig stands, so that latches and melted fuses keep their history. */
export function moveTo(rig: Rig, condition: Condition, beforeMelt?: () => void): Settled {
  rig.surround(condition);
  // An automatic breaker that cycles is tried again with every new condition.
  for (const placed of rig.changeable)
    if (rig.states.get(placed.part.id) === "cycling") rig.enter(placed, placed.kind.start);
  let settled = settle(rig, beforeMelt);
  const happenings = [...settled.happenings];
  const throwOne = (key: string, position: string): void => {
    rig.throwControl(key, position);
    settled = settle(rig, beforeMelt);
    happenings.push(...settled.happenings);
  };
  for (const { key, rest } of controlsOf(rig.circuit)) {
    if (condition.set?.[key] === undefined && rig.position(key) !== rest) throwOne(key, rest);
  }
  for (const [key, position] of Object.entries(condition.set ?? {})) {
    if (rig.position(key) !== position) throwOne(key, position);
  }
  // Only what still holds in the end is told: a relay that chattered on the way there is history.
  const melted = happenings.filter((happening) => happening.what === "melted");
  return {
    ...settled,
    happenings: [...melted, ...settled.happenings.filter((happening) => happening.what !== "melted")],
  };
}
