import { batchGreedy } from "./batch.ts";
import { costAfter, greedy, type Policy, type Scored, scored } from "./greedy.ts";
import type { Tells } from "./information.ts";
import { type Living, massOf, type Problem, type Stand } from "./problem.ts";

/** First probes that are followed to the end, and probes that those walks may choose from. */
const MOST_FIRST = 10;
const MOST_POOL = 256;

/** A probe with the minutes that are expected from it to the end. */
export interface Choice extends Scored {
  /** Minutes still expected, this probe among them. */
  readonly expected: number;
}

/**
 * The next probe by rollout (Tu and Pattipati, "Rollout strategies for sequential fault diagnosis", 2003): each promising
 * first probe is followed to the end with the greedy policies, and the one that ends soonest is taken. Null where none
 * tells anything.
 */
export function rollout(
  problem: Problem,
  tells: Tells,
  living: Living,
  stand: Stand,
  pool: readonly number[],
): Choice | null {
  const ranked = [...scored(problem, tells, living, stand, pool)].sort(
    (one, other) => other.score - one.score || one.probe - other.probe,
  );
  const near = ranked.slice(0, MOST_POOL).map(({ probe }) => probe);
  const bases: Policy[] = [greedy(problem, tells)];
  if (near.some((probe) => (problem.probes[probe]!.trim & ~stand.open) !== 0)) bases.push(batchGreedy(problem, tells));
  const mass = massOf(problem, living);
  let best: Choice | null = null;
  for (const first of firstOf(ranked, bases, living, stand, near)) {
    let expected = Number.POSITIVE_INFINITY;
    for (const base of bases) {
      // A walk that costs more than the best so far need not be walked to its end.
      const limit = (Math.min(expected, best?.expected ?? expected) - first.minutes) * mass;
      if (limit <= 0) break;
      const cost = costAfter(problem, base, living, stand, near, first.probe, { whole: mass, limit });
      expected = Math.min(expected, first.minutes + cost / mass);
    }
    if (!best || expected < best.expected) best = { ...first, expected };
  }
  return best;
}

/** The best by score, and whatever else a base policy would begin with. */
function firstOf(
  ranked: readonly Scored[],
  bases: readonly Policy[],
  living: Living,
  stand: Stand,
  near: readonly number[],
): readonly Scored[] {
  const first = ranked.slice(0, MOST_FIRST);
  for (const base of bases) {
    const own = base(living, stand, near);
    const known = ranked.find(({ probe }) => probe === own?.probe);
    if (known && !first.includes(known)) first.push(known);
  }
  return first;
}
