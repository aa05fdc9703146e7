import type { Minutes } from "../../base/units.ts";
import { costAfter, greedy, scored } from "./greedy.ts";
import type { Tells } from "./information.ts";
import { type Living, massOf, minutesFrom, type Problem, type Stand } from "./problem.ts";
import type { Choice } from "./rollout.ts";

/** Probes that the walk on from a detour may choose from. */
const MOST_POOL = 256;

/** Minutes more that are expected to the end for each of some probes, if it is taken now in place of the best one. */
export function detoursOf(
  problem: Problem,
  tells: Tells,
  living: Living,
  stand: Stand,
  pool: readonly number[],
  best: Choice,
  probes: readonly number[],
): readonly Minutes[] {
  const mass = massOf(problem, living);
  const near = [...scored(problem, tells, living, stand, pool)]
    .sort((one, other) => other.score - one.score || one.probe - other.probe)
    .slice(0, MOST_POOL)
    .map(({ probe }) => probe);
  const policy = greedy(problem, tells);
  return probes.map((probe) => {
    if (probe === best.probe) return 0;
    const own = minutesFrom(problem, problem.probes[probe]!, stand);
    const then = costAfter(problem, policy, living, stand, near, probe, { whole: mass }) / mass;
    return Math.max(0, own + then - best.expected);
  });
}
