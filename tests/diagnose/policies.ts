import { batchGreedy } from "../../core/diagnose/plan/batch.ts";
import { distinct } from "../../core/diagnose/plan/distinct.ts";
import { costAfter, greedy } from "../../core/diagnose/plan/greedy.ts";
import { tellsOf } from "../../core/diagnose/plan/information.ts";
import type { Chooser } from "../../core/diagnose/plan/next.ts";
import {
  after,
  allLiving,
  isOneRepair,
  type Living,
  massOf,
  minutesFrom,
  type Problem,
  parted,
  START,
  type Stand,
} from "../../core/diagnose/plan/problem.ts";

/** The greedy policies as choosers, to compare with. */
export function greedyPlanner(problem: Problem, base: "single" | "batch" = "single"): Chooser {
  const tells = tellsOf(problem);
  const pool = distinct(problem);
  const policy = base === "single" ? greedy(problem, tells) : batchGreedy(problem, tells);
  return (living, stand) => {
    const first = policy(living, stand, pool);
    if (!first) return null;
    const further = costAfter(problem, policy, living, stand, pool, first.probe) / massOf(problem, living);
    return { ...first, expected: first.minutes + further };
  };
}

/** Takes probes in an order given, whatever they cost; what tells nothing any more is passed over. */
export function inOrder(problem: Problem, order: readonly number[] = problem.probes.map((_, at) => at)): Chooser {
  const tells = tellsOf(problem);
  return (living, stand) => {
    for (const probe of order) {
      const bits = tells.probe(living, probe);
      const minutes = minutesFrom(problem, problem.probes[probe]!, stand);
      if (bits > 1e-9) return { probe, bits, minutes, score: 0, expected: 0 };
    }
    return null;
  };
}

/**
 * Minutes that are expected when a chooser is asked again after every outcome, until one repair is left or it has nothing
 * to offer.
 */
export function minutesExpected(problem: Problem, choose: Chooser, stand: Stand = START): number {
  const walk = (living: Living, at: Stand): number => {
    if (living.length < 2 || isOneRepair(problem, living)) return 0;
    const next = choose(living, at);
    if (!next) return 0;
    const choice = problem.probes[next.probe]!;
    const then = after(at, choice);
    return parted(living, choice.classes).reduce(
      (sum, part) => sum + walk(part, then),
      next.minutes * massOf(problem, living),
    );
  };
  const living = allLiving(problem);
  return walk(living, stand) / massOf(problem, living);
}
