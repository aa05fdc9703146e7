import { describe, expect, it } from "vitest";
import { detoursOf } from "../../core/diagnose/plan/detour.ts";
import { exact } from "../../core/diagnose/plan/exact.ts";
import { tellsOf } from "../../core/diagnose/plan/information.ts";
import { allLiving, type Living, type Problem, START, type Stand } from "../../core/diagnose/plan/problem.ts";
import { rollout } from "../../core/diagnose/plan/rollout.ts";
import { greedyPlanner, minutesExpected } from "./policies.ts";
import { problemByLot, type Sort } from "./problems.ts";

const COSTS = [1, 2, 5, 10];
const PLAIN: readonly Sort[] = [
  { suspects: 10, probes: 12, outcomes: 2, minutes: [1], hasTrim: false },
  { suspects: 10, probes: 12, outcomes: 2, minutes: COSTS, hasTrim: false },
  { suspects: 10, probes: 12, outcomes: 4, minutes: COSTS, hasTrim: false },
];
const TRIMMED: readonly Sort[] = [
  { suspects: 9, probes: 12, outcomes: 2, minutes: [1, 2, 3], hasTrim: true },
  { suspects: 9, probes: 12, outcomes: 3, minutes: [1, 2, 3], hasTrim: true },
];

interface Excess {
  readonly mean: number;
  readonly p95: number;
}

function excessOf(
  sorts: readonly Sort[],
  cases: number,
  choose: (problem: Problem) => (living: Living, stand: Stand) => ReturnType<typeof rollout>,
): Excess {
  const over = sorts.flatMap((sort) =>
    Array.from({ length: cases }, (_, seed) => {
      const problem = problemByLot(sort, seed + 1);
      const best = minutesExpected(problem, bestOf(problem));
      return best === 0 ? 0 : minutesExpected(problem, choose(problem)) / best - 1;
    }),
  );
  over.sort((one, other) => one - other);
  return { mean: over.reduce((sum, each) => sum + each, 0) / over.length, p95: over[Math.floor(0.95 * over.length)]! };
}

function bestOf(problem: Problem) {
  const tells = tellsOf(problem);
  const pool = problem.probes.map((_, probe) => probe);
  return (living: Living, stand: Stand) => exact(problem, tells, living, stand, pool)!;
}

function rolloutOf(problem: Problem) {
  const tells = tellsOf(problem);
  const pool = problem.probes.map((_, probe) => probe);
  return (living: Living, stand: Stand) => rollout(problem, tells, living, stand, pool);
}

function shown(name: string, rolled: Excess, single: Excess): void {
  const percent = ({ mean, p95 }: Excess): string =>
    `${(100 * mean).toFixed(1)} % mean, ${(100 * p95).toFixed(1)} % p95`;
  console.log(`${name}: over the optimum by rollout ${percent(rolled)}; greedy ${percent(single)}`);
}

describe("the next probe", () => {
  it("costs at most 1 % over the optimum in the mean and 5 % at p95 without trim, 210 cases, seeds 1 to 70", () => {
    const rolled = excessOf(PLAIN, 70, rolloutOf);
    shown("without trim", rolled, excessOf(PLAIN, 70, greedyPlanner));
    expect(rolled.mean).toBeLessThanOrEqual(0.01);
    expect(rolled.p95).toBeLessThanOrEqual(0.05);
  });

  it("costs at most 2 % and 10 % with trim, 200 cases, seeds 1 to 100", () => {
    const rolled = excessOf(TRIMMED, 100, rolloutOf);
    shown("with trim", rolled, excessOf(TRIMMED, 100, greedyPlanner));
    expect(rolled.mean).toBeLessThanOrEqual(0.02);
    expect(rolled.p95).toBeLessThanOrEqual(0.1);
  });
});

describe("a detour", () => {
  it("costs what the optimum costs once that probe is taken first, 30 cases, seeds 1 to 30; none for the best", () => {
    for (let seed = 1; seed <= 30; seed++) {
      const problem = problemByLot(PLAIN[1]!, seed);
      const [tells, living, choose] = [tellsOf(problem), allLiving(problem), bestOf(problem)];
      const pool = problem.probes.map((_, probe) => probe);
      const best = choose(living, START)!;
      const detours = detoursOf(problem, tells, living, START, pool, best, pool);
      expect(detours[best.probe]).toBe(0);
      for (const probe of pool) {
        const first = { ...best, probe, minutes: problem.probes[probe]!.minutes };
        const forced = (left: Living, stand: Stand) => (left.length === living.length ? first : choose(left, stand));
        const more = minutesExpected(problem, forced) - best.expected;
        // What follows is walked by the greedy policy: never under the optimum, and little over it.
        expect(detours[probe]).toBeGreaterThanOrEqual(more - 1e-9);
        expect(detours[probe]).toBeLessThanOrEqual(more + 0.2 * best.expected);
      }
    }
  });
});
