import { describe, expect, it } from "vitest";
import { tellsOf } from "../../core/diagnose/plan/information.ts";
import { planner } from "../../core/diagnose/plan/next.ts";
import { allLiving, type Problem, START } from "../../core/diagnose/plan/problem.ts";
import { rollout } from "../../core/diagnose/plan/rollout.ts";
import { greedyPlanner, minutesExpected } from "../diagnose/policies.ts";
import { problemOf } from "../diagnose/problems.ts";

/** Plans by rollout alone, so that it is tried where the optimum could be had too. */
function byRollout(problem: Problem) {
  const tells = tellsOf(problem);
  const pool = problem.probes.map((_, probe) => probe);
  return (living: Uint16Array, stand: typeof START) => rollout(problem, tells, living, stand, pool);
}

describe("Pattipati and Alexandridis, 'Application of heuristic search and information theory to sequential fault diagnosis', 1990", () => {
  // The six states by five tests and the optimum 2.18 as handed down; the optimum of this very table is 2.18.
  const problem = problemOf({
    weights: [0.7, 0.01, 0.02, 0.1, 0.05, 0.12],
    rows: [
      [0, 0, 0, 0, 0],
      [0, 1, 0, 0, 1],
      [0, 0, 1, 1, 0],
      [1, 0, 0, 1, 1],
      [1, 1, 0, 0, 0],
      [1, 1, 1, 1, 0],
    ],
    minutes: [1, 1, 1, 1, 1],
  });

  it("begins with t2 or t4 and is expected to need 2.18 tests", () => {
    const first = planner(problem)(allLiving(problem), START);
    expect([1, 3]).toContain(first!.probe);
    expect(first!.expected).toBeCloseTo(2.18, 10);
    expect(minutesExpected(problem, planner(problem))).toBeCloseTo(2.18, 10);
  });

  it("gets there by rollout alone, where greedy needs 2.86", () => {
    expect(minutesExpected(problem, byRollout(problem))).toBeCloseTo(2.18, 10);
    expect(minutesExpected(problem, greedyPlanner(problem))).toBeCloseTo(2.86, 10);
  });

  it("sees in each test the bits worked out by hand", () => {
    const tells = tellsOf(problem);
    const bits = problem.probes.map((_, probe) => tells.probe(allLiving(problem), probe));
    [0.8415, 0.6801, 0.5842, 0.795, 0.4999].forEach((want, test) => {
      expect(bits[test]).toBeCloseTo(want, 4);
    });
  });
});

describe("Cormen, Leiserson, Rivest and Stein, 'Introduction to Algorithms', optimal binary search tree of five keys", () => {
  it("needs 2.35 three-valued probes on the line; with the leaves counted as the book does 2.75", () => {
    const keys = [0.15, 0.1, 0.05, 0.1, 0.2];
    const gaps = [0.05, 0.1, 0.05, 0.05, 0.05, 0.1];
    // In order of the line: gap 0, key 1, gap 1, key 2, ...
    const weights = gaps.flatMap((gap, index) => (index < keys.length ? [gap, keys[index]!] : [gap]));
    const rows = weights.map((_, at) => keys.map((_, key) => Math.sign(at - (2 * key + 1)) + 1));
    const problem = problemOf({ weights, rows, minutes: keys.map(() => 1) });
    expect(minutesExpected(problem, planner(problem))).toBeCloseTo(2.35, 10);
    const leaves = gaps.reduce((sum, gap) => sum + gap, 0);
    expect(minutesExpected(problem, planner(problem)) + leaves).toBeCloseTo(2.75, 10);
    expect(planner(problem)(allLiving(problem), START)!.probe).toBe(1);
  });
});

describe("MacKay, 'Information Theory, Inference and Learning Algorithms', exercise 4.1: twelve balls", () => {
  const weighings = (most: number): readonly (readonly number[])[] => {
    const found: number[][] = [];
    const lay = (pans: number[], ball: number, left: number, right: number): void => {
      if (ball === 12) {
        // The mirror image tells the same.
        if (left === right && left >= 1 && left <= most && pans[pans.findIndex((pan) => pan !== 0)] === 1)
          found.push(pans);
        return;
      }
      if (left > most || right > most) return;
      for (const pan of [0, 1, -1])
        lay([...pans, pan], ball + 1, left + (pan === 1 ? 1 : 0), right + (pan === -1 ? 1 : 0));
    };
    lay([], 0, 0, 0);
    return found;
  };
  // A suspect is a ball and whether it is heavy or light; a weighing tips as the odd ball lies.
  const problemWith = (pans: readonly (readonly number[])[]): Problem => {
    const odd = Array.from({ length: 24 }, (_, index) => ({ ball: index >> 1, heavy: index % 2 === 0 ? 1 : -1 }));
    return problemOf({
      weights: odd.map(() => 1),
      rows: odd.map(({ ball, heavy }) => pans.map((weighing) => weighing[ball]! * heavy + 1)),
      minutes: pans.map(() => 1),
    });
  };

  it("tells the published bits in a first weighing of one to six balls a side", () => {
    const pans = [1, 2, 3, 4, 5, 6].map((side) =>
      Array.from({ length: 12 }, (_, ball) => (ball < side ? 1 : ball < 2 * side ? -1 : 0)),
    );
    const problem = problemWith(pans);
    const tells = tellsOf(problem);
    [0.8167, 1.2516, 1.5, 1.585, 1.4834, 1].forEach((want, index) => {
      expect(tells.probe(allLiving(problem), index)).toBeCloseTo(want, 4);
    });
  });

  it("names the ball in three weighings, four against four first", () => {
    // A seventh of all weighings of up to four balls a side are choice enough, and quick.
    const problem = problemWith(weighings(4).filter((_, index) => index % 7 === 0));
    const first = byRollout(problem)(allLiving(problem), START)!;
    expect(first.bits).toBeCloseTo(Math.log2(3), 4);
    expect(minutesExpected(problem, byRollout(problem))).toBeCloseTo(3, 10);
  });
});

describe("halving a line of equal segments (closed form: a Huffman code of equal weights)", () => {
  const line = (segments: number): Problem =>
    problemOf({
      weights: Array.from({ length: segments }, () => 1),
      rows: Array.from({ length: segments }, (_, at) =>
        Array.from({ length: segments - 1 }, (_, probe) => (at <= probe ? 0 : 1)),
      ),
      minutes: Array.from({ length: segments - 1 }, () => 1),
    });

  it.each([
    [4, 2],
    [5, 2.4],
    [6, 2.6667],
    [8, 3],
    [10, 3.4],
    [13, 3.7692],
  ])("%i segments need %f probes", (segments, probes) => {
    expect(minutesExpected(line(segments), planner(line(segments)))).toBeCloseTo(probes, 4);
  });

  it.each([
    [16, 4],
    [17, 4.1176],
  ])("%i segments need at most one per cent more than %f", (segments, probes) => {
    expect(minutesExpected(line(segments), planner(line(segments)))).toBeLessThanOrEqual(1.01 * probes);
  });
});
