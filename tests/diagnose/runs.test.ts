import { describe, expect, it } from "vitest";
import { lotsFrom } from "../../core/base/seed.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { planner } from "../../core/diagnose/plan/next.ts";
import { possibleFaults } from "../../core/diagnose/possible.ts";
import { repairsOf } from "../../core/diagnose/repairs.ts";
import { rowsFor } from "../../core/diagnose/rows.ts";
import type { Suspect } from "../../core/diagnose/step.ts";
import { type Observation, suspectsFor } from "../../core/diagnose/suspects.ts";
import { triesFor } from "../../core/diagnose/tries.ts";
import { trials } from "../long.ts";
import { SAMPLE_NAMES as SAMPLES, sample } from "../samples/onTheBench.ts";
import { inOrder, minutesExpected } from "./policies.ts";
import { careless, type Ended, search } from "./simulate.ts";

function complaintOf(circuit: Circuit): Observation {
  const check = circuit.checks[0]!;
  return { check, word: check.expect === "off" ? "wrong" : "dead" };
}

/** Every so manieth suspect of the first check, with what a search for it comes to. */
function searches(name: string, every: number, wrong: number, seed: number) {
  const circuit = sample(name);
  const complaint = complaintOf(circuit);
  const lot = lotsFrom(seed);
  return suspectsFor(circuit, complaint)
    .filter((_, index) => index % every === 0)
    .map(({ possible }) => ({
      possible,
      ended: search(circuit, complaint, possible, careless(wrong, circuit.nominalVolts, lot)),
    }));
}

/** How often the leading repair was right, by how likely it was called, and the log loss of the true one, in bits. */
function showCalibration(course: Ended["course"]): void {
  const edges = [0, 0.2, 0.4, 0.6, 0.8, 0.95, 1.01];
  const rows = edges.slice(0, -1).map((from, index) => {
    const own = course.filter(({ leads }) => leads >= from && leads < edges[index + 1]!);
    const share = (pick: (each: Ended["course"][number]) => number): string =>
      own.length === 0 ? "-" : (own.reduce((sum, each) => sum + pick(each), 0) / own.length).toFixed(2);
    return {
      from,
      times: own.length,
      "called, mean": share(({ leads }) => leads),
      right: share(({ isRight }) => (isRight ? 1 : 0)),
    };
  });
  const loss = course.reduce((sum, { truth }) => sum - Math.log2(Math.max(truth, 1e-6)), 0) / course.length;
  console.table(rows);
  console.log(`log loss ${loss.toFixed(2)} bits a row`);
}

describe("a planted fault", () => {
  it.each(SAMPLES)("is found on %s where every reading is right", (name) => {
    const lost = searches(name, trials(30, 15), 0, 1).filter(({ ended }) => !ended.isFound);
    expect(lost.map(({ possible }) => possible.id)).toEqual([]);
  });

  const sought: ReturnType<typeof searches>[number][] = [];
  it.each(SAMPLES)("is sought on %s by somebody who misreads one row of twenty (seed 7)", (name) => {
    const own = searches(name, trials(26, 13), 0.05, 7);
    sought.push(...own);
    expect(own.length).toBeGreaterThan(0);
  });

  it("is found in 95 of 100 of these searches", () => {
    const found = sought.filter(({ ended }) => ended.isFound).length;
    console.log(`found ${found} of ${sought.length} with 5 % of rows misread`);
    showCalibration(sought.flatMap(({ ended }) => ended.course));
    expect(found / sought.length).toBeGreaterThanOrEqual(0.95);
  });

  it.each(["1-roof-vents", "5-blower", "8-wiper", "9-liftgate"])(
    "that is a seized or jammed motor on %s never ends at a switch",
    (name) => {
      const circuit = sample(name);
      const complaint = complaintOf(circuit);
      const stuck = possibleFaults(circuit).filter(
        ({ faults }) => faults[0]!.target === complaint.check.load && /^(seized|jammed)/.test(faults[0]!.mode),
      );
      expect(stuck.length).toBeGreaterThan(0);
      for (const possible of stuck) {
        const { order, isFound } = search(circuit, complaint, possible);
        const leader = repairsOf(order.suspects)[0]!.suspects[0]!;
        const part = circuit.parts.find(({ id }) => id === leader.faults[0]!.target);
        expect(part?.kind).not.toMatch(/switch/);
        expect(isFound).toBe(true);
      }
    },
  );
});

describe("the minutes a search is expected to take", () => {
  it("are never more than in drawing order, and at most 0.6 of them in the geometric mean over the samples", () => {
    const shares = SAMPLES.map((name) => {
      const circuit = sample(name);
      const { check, word } = complaintOf(circuit);
      const suspected = suspectsFor(circuit, { check, word });
      const total = suspected.reduce((sum, { weight }) => sum + weight, 0);
      const suspects = suspected.map(
        ({ possible: { id, faults, title, repair }, weight }): Suspect => ({
          id,
          faults,
          title,
          repairGroup: repair,
          notes: [],
          probability: weight / total,
        }),
      );
      const { problem } = rowsFor(circuit, check.condition, suspects, triesFor(circuit, check), []);
      const planned = minutesExpected(problem, planner(problem));
      const drawn = minutesExpected(problem, inOrder(problem));
      console.log(`${name}: ${planned.toFixed(1)} minutes expected, ${drawn.toFixed(1)} in drawing order`);
      return planned / drawn;
    });
    expect(Math.max(...shares)).toBeLessThanOrEqual(1);
    const mean = Math.exp(shares.reduce((sum, share) => sum + Math.log(share), 0) / shares.length);
    console.log(`geometric mean ${mean.toFixed(2)}`);
    expect(mean).toBeLessThanOrEqual(0.6);
  });
});
