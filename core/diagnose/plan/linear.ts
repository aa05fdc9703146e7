import type { Minutes } from "../../base/units.ts";
import type { Tells } from "./information.ts";
import { after, isOneRepair, type Living, massOf, minutesFrom, type Problem, parted, type Stand } from "./problem.ts";

/** A row worth less than this many bits is not offered in a list. */
const LEAST_BITS = 0.03;

/** A row of a list, with what it costs after those before it and what it tells beside them. */
export interface Listed {
  readonly probe: number;
  readonly minutes: Minutes;
  readonly bits: number;
}

/** What a list may be. */
export interface ListLimits {
  readonly rows: number;
  readonly minutes: Minutes;
  /** Probe that stands first, or null. */
  readonly first: number | null;
}

/**
 * A list of probes that are all read, whatever they show: most bits for each further minute, beside the rows before.
 * Ends when no row tells anything more, or at the limits.
 */
export function linear(
  problem: Problem,
  tells: Tells,
  living: Living,
  start: Stand,
  pool: readonly number[],
  { rows, minutes: budget, first }: ListLimits,
): readonly Listed[] {
  const whole = massOf(problem, living);
  const list: Listed[] = [];
  let sets: readonly Living[] = [living];
  let stand = start;
  let spent = 0;
  const take = (probe: number, bits: number, minutes: Minutes): void => {
    const choice = problem.probes[probe]!;
    list.push({ probe, bits, minutes });
    sets = sets.flatMap((set) => parted(set, choice.classes)).filter((set) => !isOneRepair(problem, set));
    stand = after(stand, choice);
    spent += minutes;
  };
  const bitsOf = (probe: number): number =>
    sets.reduce((sum, set) => sum + (massOf(problem, set) / whole) * tells.probe(set, probe), 0);
  if (first !== null) {
    const minutes = minutesFrom(problem, problem.probes[first]!, stand);
    if (minutes <= budget) take(first, bitsOf(first), minutes);
  }
  while (list.length < rows) {
    let best: Listed | null = null;
    for (const probe of pool) {
      const minutes = minutesFrom(problem, problem.probes[probe]!, stand);
      if (spent + minutes > budget) continue;
      const bits = bitsOf(probe);
      if (bits >= LEAST_BITS && (!best || bits / minutes > best.bits / best.minutes)) best = { probe, bits, minutes };
    }
    if (!best) return list;
    take(best.probe, best.bits, best.minutes);
  }
  return list;
}
