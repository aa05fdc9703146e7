import { lotsFrom } from "../base/seed.ts";
import type { Circuit, FunctionCheck } from "../circuit/circuit.ts";
import type { Possible } from "../diagnose/possible.ts";
import type { Difficulty, GradedFault } from "./graded.ts";

/** The function check that a seed draws where none is named. The circuit must have one. */
export function drawnCheck({ checks }: Circuit, seed: number): FunctionCheck {
  return checks[Math.floor(lotsFrom(seed)() * checks.length)]!;
}

/**
 * The fault that a seed draws out of a check's graded cupboard, of any difficulty where none is named: the same one wherever it
 * is drawn. Only what the instruments can prove is drawn; undefined where there is none.
 */
export function drawnFrom(
  { checks }: Circuit,
  graded: readonly GradedFault[],
  seed: number,
  wanted?: Difficulty,
): GradedFault | undefined {
  const offered = graded.filter(
    ({ difficulty, canBeProven }) => canBeProven && (wanted === undefined || difficulty === wanted),
  );
  // The lot of the check is drawn with the same seed: another one for the fault.
  return drawnFault(offered, seed + checks.length);
}

/** One of several faults by seed, as likely as it is on vehicles; undefined where there is none. */
export function drawnFault<T extends { readonly possible: Possible }>(
  offered: readonly T[],
  seed: number,
): T | undefined {
  const whole = offered.reduce((sum, { possible }) => sum + possible.weight, 0);
  let left = lotsFrom(seed)() * whole;
  return offered.find(({ possible }) => {
    left -= possible.weight;
    return left < 0;
  });
}
