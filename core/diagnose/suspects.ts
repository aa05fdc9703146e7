import { remember } from "../base/memo.ts";
import type { Amps, Share } from "../base/units.ts";
import type { Circuit, FunctionCheck } from "../circuit/circuit.ts";
import { doingIn } from "../live/doing.ts";
import { agrees, judge, type Observed, type Verdict } from "../live/judge.ts";
import { levelOf } from "../live/live.ts";
import { Rig } from "../live/rig.ts";
import { reach } from "../live/settle.ts";
import type { Doing } from "../parts/kind.ts";
import { drains } from "./drain.ts";
import { type Possible, possibleFaults } from "./possible.ts";
import { sharedCauses } from "./sharedCauses.ts";
import { starved } from "./starved.ts";

/** How often an observation is wrong (a guess): a suspect that contradicts one keeps this much of its weight. */
export const OBSERVED_WRONGLY = 0.02;

/** What a person saw of one function check. */
export interface Observation {
  readonly check: FunctionCheck;
  readonly word: Observed;
  /** Amps expected of a sleeping vehicle, where a battery goes flat; null where a load is judged by its work. */
  readonly sleeping?: Amps | null;
}

/** Something that reproduces the complaint, weighed by what else was seen. */
export interface Suspected {
  readonly possible: Possible;
  readonly weight: number;
  /** Labels of the checks that contradict it. */
  readonly against: readonly string[];
}

/**
 * Tries everything that can be wrong: what does not bring the complaint about is no suspect. Each further observation
 * leaves a suspect that contradicts it a fiftieth of its weight; "works" clears by the level of its check alone.
 */
export function suspectsFor(
  circuit: Circuit,
  complaint: Observation,
  others: readonly Observation[] = [],
): readonly Suspected[] {
  return kept(lastOf(circuit), complaint, others, () => [
    ...possibleFaults(circuit),
    ...starved(circuit, complaint.check.condition),
  ]);
}

/** The same for pairs of faults that share a cause. */
export function pairsFor(
  circuit: Circuit,
  complaint: Observation,
  others: readonly Observation[],
): readonly Suspected[] {
  return kept(lastPairsOf(circuit), complaint, others, () => sharedCauses(circuit));
}

/** The last answer for each circuit: with every reading the same is asked again. */
const lastOf = remember((circuit: Circuit): Last => ({ circuit, key: "", suspected: [] }));
const lastPairsOf = remember((circuit: Circuit): Last => ({ circuit, key: "", suspected: [] }));

interface Last {
  readonly circuit: Circuit;
  key: string;
  suspected: readonly Suspected[];
}

/** The last answer where the same is asked again, else a new one, tried out of all these. */
function kept(
  last: Last,
  complaint: Observation,
  others: readonly Observation[],
  all: () => readonly Possible[],
): readonly Suspected[] {
  const seen = [complaint, ...others].map(({ check, word, sleeping }) => `${check.id}=${word}${sleeping ?? ""}`);
  const key = seen.join(" ");
  if (last.key !== key) Object.assign(last, { key, suspected: triedOut(last.circuit, complaint, others, all()) });
  return last.suspected;
}

function triedOut(
  circuit: Circuit,
  complaint: Observation,
  others: readonly Observation[],
  all: readonly Possible[],
): readonly Suspected[] {
  const further = others.filter((observation) => observation.word !== "not-tried");
  const healthy = new Rig(circuit);
  const good = [complaint, ...further].map(({ check }) => tryOut(healthy, check).doing);
  const found: Suspected[] = [];
  let rig = healthy;
  for (const possible of all) {
    rig = new Rig(circuit, possible.faults, [], rig);
    if (!isSeen(rig, complaint, good[0]!)) continue;
    const against = further
      .filter((observation, index) => !isSeen(rig, observation, good[index + 1]!))
      .map(({ check }) => check.label);
    found.push({ possible, weight: possible.weight * OBSERVED_WRONGLY ** against.length, against });
  }
  return found;
}

/** Tries a check once and says what its load did, and whether a fuse suffered. */
export function tryOut(rig: Rig, check: FunctionCheck): { readonly doing: Doing; readonly melted: boolean } {
  const settled = reach(rig, check.condition);
  const melted = settled.happenings.some((happening) => happening.what === "melted" || happening.what === "may-melt");
  return { doing: doingIn(rig, check.load), melted };
}

function isSeen(rig: Rig, { check, word, sleeping }: Observation, healthy: Doing): boolean {
  if (typeof sleeping === "number") return drains(tryOut(rig, check).doing.amps, healthy.amps, sleeping);
  const { verdict, melted } = triedOn(rig, check, healthy);
  return agrees(verdict, word, melted);
}

/** What a rig does when a check is tried once from good fuses, against the load's work in the good circuit. */
export function triedOn(
  rig: Rig,
  check: FunctionCheck,
  healthy: Doing,
): { readonly verdict: Verdict; readonly level: Share | null; readonly melted: boolean } {
  const { doing, melted } = tryOut(rig, check);
  const level = levelOf(doing, healthy);
  return { verdict: judge(check, { doing: doing.doing, level }), level, melted };
}
