import type { Minutes } from "../../base/units.ts";

/** A probe as the planner sees it: how it parts the suspects, and what it costs. */
export interface ProbeChoice {
  /** Outcome class of each suspect, from 0. */
  readonly classes: Uint8Array;
  /** Minutes of the probe itself: no trim, no way, no change of the meter. */
  readonly minutes: Minutes;
  /** Bits of the trim that must be off, as numbered in `Problem.trimMinutes`. */
  readonly trim: number;
  /** Number of the place it is taken at, and of the meter's setting: to change either costs. */
  readonly place: number;
  readonly mode: number;
}

/** Suspects, what they are mended by, and the probes there are. Names stay outside: this is numbers only. */
export interface Problem {
  /** Weight of each suspect, above 0; they need not add up to 1. */
  readonly weights: Float64Array;
  /** Number of the repair that mends each suspect. */
  readonly repairs: Uint16Array;
  readonly probes: readonly ProbeChoice[];
  /** Minutes to take off each piece of trim, `MOST_TRIM` pieces at most. */
  readonly trimMinutes: readonly Minutes[];
  readonly changePlace: Minutes;
  readonly changeMode: Minutes;
}

/** Pieces of trim that fit the bits of a number. */
export const MOST_TRIM = 30;
/** A place or setting of the meter before the first probe, or of a probe that needs no meter: to leave it costs nothing. */
export const NOWHERE = -1;

/** How things stand before a probe: trim that is off, where the person is, what the meter is set to. */
export interface Stand {
  readonly open: number;
  readonly place: number;
  readonly mode: number;
}

/** Before anything was probed. */
export const START: Stand = { open: 0, place: NOWHERE, mode: NOWHERE };

/** Suspects that still live, by number, those of one repair side by side. */
export type Living = Uint16Array;

/** All suspects of a problem as living ones. */
export function allLiving({ weights, repairs }: Problem): Living {
  const numbers = Uint16Array.from(weights, (_, index) => index);
  return numbers.sort((one, other) => repairs[one]! - repairs[other]! || one - other);
}

/** Minutes a probe adds from where things stand: itself, trim that is still on, the way, the meter. */
export function minutesFrom(problem: Problem, probe: ProbeChoice, { open, place, mode }: Stand): Minutes {
  let minutes = probe.minutes + trimMinutes(problem, probe.trim & ~open);
  if (place !== NOWHERE && probe.place !== place) minutes += problem.changePlace;
  if (mode !== NOWHERE && probe.mode !== NOWHERE && probe.mode !== mode) minutes += problem.changeMode;
  return minutes;
}

function trimMinutes(problem: Problem, pieces: number): Minutes {
  let minutes = 0;
  for (let left = pieces; left !== 0; left &= left - 1) minutes += problem.trimMinutes[31 - Math.clz32(left & -left)]!;
  return minutes;
}

/** Whether one probe costs no more than another wherever things stand. */
export function isNeverDearer(one: ProbeChoice, other: ProbeChoice): boolean {
  return (
    one.minutes <= other.minutes &&
    (one.trim & ~other.trim) === 0 &&
    one.place === other.place &&
    one.mode === other.mode
  );
}

/** How things stand once a probe is taken. */
export function after(stand: Stand, { trim, place, mode }: ProbeChoice): Stand {
  return { open: stand.open | trim, place, mode: mode === NOWHERE ? stand.mode : mode };
}

/** The living, parted by what a probe shows of each; classes nobody is in are left out. */
export function parted(living: Living, classes: Uint8Array): readonly Living[] {
  const counts = new Map<number, number>();
  for (const each of living) counts.set(classes[each]!, (counts.get(classes[each]!) ?? 0) + 1);
  const parts = new Map<number, { readonly into: Living; filled: number }>();
  for (const [outcome, count] of counts) parts.set(outcome, { into: new Uint16Array(count), filled: 0 });
  for (const each of living) {
    const part = parts.get(classes[each]!)!;
    part.into[part.filled++] = each;
  }
  return [...parts.values()].map(({ into }) => into);
}

/** Weight of the living together. */
export function massOf({ weights }: Problem, living: Living): number {
  let mass = 0;
  for (const each of living) mass += weights[each]!;
  return mass;
}

/** Whether one repair mends all that live: nothing is left to find. */
export function isOneRepair({ repairs }: Problem, living: Living): boolean {
  // Those of one repair stand side by side.
  return living.length === 0 || repairs[living[0]!] === repairs[living[living.length - 1]!];
}
