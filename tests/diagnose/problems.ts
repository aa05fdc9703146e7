import { lotsFrom } from "../../core/base/seed.ts";
import type { ProbeChoice, Problem } from "../../core/diagnose/plan/problem.ts";

/** A problem out of rows of outcomes (a row a suspect), with one repair a suspect and no trim unless given. */
export function problemOf(given: {
  readonly weights: readonly number[];
  readonly rows: readonly (readonly number[])[];
  readonly minutes: readonly number[];
  readonly repairs?: readonly number[];
  readonly trim?: readonly number[];
  readonly trimMinutes?: readonly number[];
}): Problem {
  const probes = given.minutes.map(
    (minutes, probe): ProbeChoice => ({
      classes: Uint8Array.from(given.rows, (row) => row[probe]!),
      minutes,
      trim: given.trim?.[probe] ?? 0,
      place: 0,
      mode: 0,
    }),
  );
  return {
    weights: Float64Array.from(given.weights),
    repairs: Uint16Array.from(given.repairs ?? given.weights.map((_, index) => index)),
    probes,
    trimMinutes: given.trimMinutes ?? [],
    changePlace: 0,
    changeMode: 0,
  };
}

/** How a problem by lot is made. */
export interface Sort {
  readonly suspects: number;
  readonly probes: number;
  readonly outcomes: number;
  readonly minutes: readonly number[];
  /** Pieces of trim of 5, 10 and 20 minutes, behind which three of four probes lie. */
  readonly hasTrim: boolean;
}

/** A problem by lot from a seed: weights and outcomes even, minutes drawn from those given. */
export function problemByLot(sort: Sort, seed: number): Problem {
  const lot = lotsFrom(seed);
  const draw = (below: number): number => Math.floor(lot() * below);
  return problemOf({
    weights: Array.from({ length: sort.suspects }, () => 0.05 + lot()),
    rows: Array.from({ length: sort.suspects }, () => Array.from({ length: sort.probes }, () => draw(sort.outcomes))),
    minutes: Array.from({ length: sort.probes }, () => sort.minutes[draw(sort.minutes.length)]!),
    ...(sort.hasTrim && {
      trim: Array.from({ length: sort.probes }, () => [0, 1, 2, 4][draw(4)]!),
      trimMinutes: [5, 10, 20],
    }),
  });
}
