import { describe, expect, it } from "vitest";
import { lotsFrom } from "../../core/base/seed.ts";
import { branchesFor } from "../../core/diagnose/branches.ts";
import { firstMisled, verdictFor } from "../../core/diagnose/branchWalk.ts";
import { vehicleWith } from "../../core/diagnose/otherVehicles.ts";
import { possibleFaults } from "../../core/diagnose/possible.ts";
import { SAMPLE_NAMES } from "../samples/onTheBench.ts";
import { firstBranches, firstComplaint } from "./firstBranches.ts";

describe("a branch sheet", () => {
  it.each(SAMPLE_NAMES)("leads every suspect of %s to a verdict that names its repair", (name) => {
    const { circuit, complaint } = firstComplaint(name);
    const branches = firstBranches(name);
    expect(branches.suspects.length).toBeGreaterThan(5);
    for (const suspect of branches.suspects) {
      const letter = verdictFor(circuit, complaint, branches, suspect);
      const verdict = branches.verdicts.find((each) => each.letter === letter);
      expect(verdict?.repairs.map(({ repair }) => repair)).toContain(suspect.repairGroup);
    }
  });

  it.each(SAMPLE_NAMES)("of %s leads nobody to a wrong part on another vehicle, by lot with seed 5", (name) => {
    const { circuit, complaint } = firstComplaint(name);
    const branches = firstBranches(name);
    const draw = lotsFrom(5);
    // Battery 12.2 to 12.9 V, wires and contacts x 0.6 to 1.6: none of those the limits were cut for.
    const spread = { battery: (12.2 + 0.7 * draw()) / 12.6, ohms: 0.6 + draw() };
    const vehicle = vehicleWith(circuit, spread);
    const misled = branches.suspects.flatMap((suspect) => {
      const letter = verdictFor(vehicle, complaint, branches, suspect);
      const verdict = branches.verdicts.find((each) => each.letter === letter);
      const isRight = verdict?.repairs.some(({ repair }) => repair === suspect.repairGroup);
      return verdict === undefined || isRight ? [] : [`${suspect.title} at ${letter}`];
    });
    expect(misled).toEqual([]);
  });

  it.each(SAMPLE_NAMES)("of %s sends nobody round, and leaves no row and no verdict that nobody comes to", (name) => {
    const { rows, verdicts } = firstBranches(name);
    const reached = new Set<number>([1]);
    const letters = new Set<string>();
    const walk = (number: number, before: readonly number[]): void => {
      expect(before).not.toContain(number);
      for (const { goes } of rows[number - 1]!.lines) {
        if ("verdict" in goes) letters.add(goes.verdict);
        else {
          reached.add(goes.row);
          walk(goes.row, [...before, number]);
        }
      }
    };
    walk(1, []);
    expect(reached.size).toBe(rows.length);
    expect([...letters].sort()).toEqual(verdicts.map(({ letter }) => letter).sort());
    expect(rows.map(({ step }) => step.number)).toEqual(rows.map((_, index) => index + 1));
  });

  it("is refused where a printed limit would mislead somebody", () => {
    const { circuit, complaint } = firstComplaint("1-roof-vents");
    const branches = firstBranches("1-roof-vents");
    expect(firstMisled(circuit, complaint, branches)).toBeNull();
    const [first, ...others] = branches.rows;
    const [line, next, ...rest] = first!.lines;
    const swapped = { ...first!, lines: [{ ...line!, goes: next!.goes }, { ...next!, goes: line!.goes }, ...rest] };
    expect(firstMisled(circuit, complaint, { ...branches, rows: [swapped, ...others] })).not.toBeNull();
  });

  it("never ends a seized or jammed motor at a switch", () => {
    for (const name of ["1-roof-vents", "5-blower", "8-wiper", "9-liftgate"]) {
      const { circuit, complaint } = firstComplaint(name);
      const branches = firstBranches(name);
      for (const { id, faults } of possibleFaults(circuit)) {
        const [{ target, mode }] = faults as [(typeof faults)[number]];
        if (target !== complaint.check.load || !/^(seized|jammed)/.test(mode)) continue;
        const letter = verdictFor(circuit, complaint, branches, { id, faults });
        const verdict = branches.verdicts.find((each) => each.letter === letter);
        const kinds = verdict?.repairs.map(({ suspects }) => {
          const owner = suspects[0]!.faults[0]!.target;
          return circuit.parts.find((part) => part.id === owner)?.kind;
        });
        expect(kinds?.[0]).not.toMatch(/switch/);
      }
    }
  });

  it("goes no deeper than it is told", () => {
    const { circuit, complaint } = firstComplaint("4-horn");
    const shallow = branchesFor(circuit, complaint, { depth: 1 });
    expect(shallow.ok && shallow.value.rows.length).toBe(1);
  });
});
