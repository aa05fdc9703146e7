import { describe, expect, it } from "vitest";
import { lotsFrom } from "../../core/base/seed.ts";
import { distinct } from "../../core/diagnose/plan/distinct.ts";
import { tellsOf } from "../../core/diagnose/plan/information.ts";
import { allLiving, type Living, type Problem } from "../../core/diagnose/plan/problem.ts";
import { problemOf } from "./problems.ts";

/** Bits about the repair by the definition alone: entropy over repairs, less what is left of it in each class. */
function byDefinition({ weights, repairs, probes }: Problem, living: Living, probe: number): number {
  const entropy = (of: readonly number[]): number => {
    const mass = new Map<number, number>();
    for (const each of of) mass.set(repairs[each]!, (mass.get(repairs[each]!) ?? 0) + weights[each]!);
    const total = [...mass.values()].reduce((sum, each) => sum + each, 0);
    return [...mass.values()].reduce((sum, each) => sum - (each / total) * Math.log2(each / total), 0);
  };
  const massOf = (of: readonly number[]): number => of.reduce((sum, each) => sum + weights[each]!, 0);
  const all = [...living];
  const classes = Map.groupBy(all, (each) => probes[probe]!.classes[each]!);
  return [...classes.values()].reduce(
    (left, part) => left - (massOf(part) / massOf(all)) * entropy(part),
    entropy(all),
  );
}

describe("what a probe tells", () => {
  // 60 suspects of 25 repairs; probe p shows three classes to every (p + 1)th suspect and one to the others.
  const lot = lotsFrom(2026);
  const problem = problemOf({
    weights: Array.from({ length: 60 }, () => 0.1 + lot()),
    repairs: Array.from({ length: 60 }, (_, each) => each % 25),
    rows: Array.from({ length: 60 }, () =>
      Array.from({ length: 12 }, (_, probe) => (lot() * (probe + 1) < 1 ? Math.floor(lot() * 3) : 1)),
    ),
    minutes: Array.from({ length: 12 }, () => 1),
  });
  const tells = tellsOf(problem);
  const everyone = allLiving(problem);

  it.each([1, 2, 5])("is the entropy it is expected to take off, where one of %i lives", (every) => {
    const set = everyone.filter((each) => each % every === 0);
    for (const [probe, { classes }] of problem.probes.entries()) {
      const bits = byDefinition(problem, set, probe);
      expect(tells.probe(set, probe)).toBeCloseTo(bits, 10);
      expect(tells.classes(set, classes)).toBeCloseTo(bits, 10);
    }
  });

  it("is nothing where all show the same", () => {
    const silent = problemOf({ weights: [1, 2, 3], rows: [[4], [4], [4]], minutes: [1] });
    expect(tellsOf(silent).probe(allLiving(silent), 0)).toBe(0);
  });

  it("comes once of probes that part alike, however their classes are numbered, the cheapest of them", () => {
    const same = problemOf({
      weights: [1, 1, 1, 1],
      rows: [
        [0, 3, 1, 0],
        [0, 3, 1, 1],
        [1, 0, 2, 0],
        [1, 0, 2, 1],
      ],
      minutes: [1, 2, 0.5, 1],
    });
    expect(distinct(same)).toEqual([0, 2, 3]);
  });
});
