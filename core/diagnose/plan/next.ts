import { distinct } from "./distinct.ts";
import { exact } from "./exact.ts";
import { type Tells, tellsOf } from "./information.ts";
import type { Living, Problem, Stand } from "./problem.ts";
import { type Choice, rollout } from "./rollout.ts";

/** Chooses the next probe for those that live. */
export type Chooser = (living: Living, stand: Stand) => Choice | null;

/** The planner: the optimum where it can be worked out, else rollout over the better of the greedy policies. */
export function planner(
  problem: Problem,
  tells: Tells = tellsOf(problem),
  pool: readonly number[] = distinct(problem),
): Chooser {
  return (living, stand) => {
    const best = exact(problem, tells, living, stand, pool);
    return best === undefined ? rollout(problem, tells, living, stand, pool) : best;
  };
}
