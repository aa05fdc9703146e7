import { describe, expect, it } from "vitest";
import { probeOrder } from "../../core/diagnose/order.ts";
import { isAct } from "../../core/diagnose/step.ts";
import { standsFor } from "../../core/diagnose/tablePositions.ts";
import { positionTable } from "../../core/diagnose/tableReading.ts";
import { MINUTES, minutesToOpen, testPointsOf } from "../../core/diagnose/testPoint.ts";
import { ROW } from "../live/vehicle.ts";
import { sample } from "../samples/onTheBench.ts";

const vents = sample("1-roof-vents");
const complaint = { check: vents.checks.find((check) => check.id === "middle-open-own")!, word: "dead" } as const;
const order = probeOrder(vents, complaint);

describe("the probe order", () => {
  it("gives suspects and cleared together all the probability there is", () => {
    const all = [...order.suspects, ...order.cleared].reduce((sum, suspect) => sum + suspect.probability, 0);
    expect(all + order.elsewhere).toBeCloseTo(1, 9);
    expect(order.suspects.every((suspect) => suspect.probability > 0)).toBe(true);
  });

  it("charges opened trim once", () => {
    const open = new Set<string>();
    for (const step of order.steps) {
      const trim = minutesToOpen(vents, step.access, open);
      expect(step.minutes).toBeGreaterThanOrEqual(trim);
      if (step.access !== null && trim > 0) {
        open.add(step.access);
        // An act takes as long as some trim does.
        const probed = order.steps.filter((other) => other.access === step.access && !isAct(other.instrument));
        expect(probed.filter((other) => other.minutes >= trim + 0.5).length).toBe(1);
      }
    }
  });

  it("charges the way from one place to another, so that rows of one place stand together", () => {
    let before: string | null | undefined;
    const open = new Set<string>();
    for (const step of order.steps) {
      const way = before === undefined || before === step.access ? 0 : MINUTES.changePlace;
      const trim = minutesToOpen(vents, step.access, open);
      expect(step.minutes).toBeGreaterThanOrEqual(trim + way);
      if (step.access !== null) open.add(step.access);
      before = step.access;
    }
    const lasts = new Map(order.steps.map(({ access }, index) => [access, index]));
    const returns = order.steps.filter(
      ({ access }, index) => order.steps[index + 1]?.access !== access && lasts.get(access) !== index,
    );
    expect(returns.length).toBeLessThanOrEqual(2);
  });

  it("offers no row that parts nothing, and none where probing is forbidden", () => {
    for (const step of order.steps) expect(step.outcomes.length).toBeGreaterThan(1);
    const forbidden = testPointsOf(vents)
      .filter((at) => at.doNotProbe !== null)
      .map((at) => at.point);
    expect(forbidden.length).toBeGreaterThan(0);
    for (const step of order.steps) expect(forbidden).not.toContain(step.point);
  });

  it("hangs a lamp only where a good circuit lights it, and never asks for 0.0 V alone to prove a ground", () => {
    for (const step of order.steps) {
      if (step.lampTo !== null) expect(step.settings[0]!.expect.lamp).toBe("bright");
      const isZeroAlone =
        step.instrument === "meter volts" &&
        step.black === "battery -" &&
        step.settings.every(({ expect: { high } }) => high < 0.2);
      expect(isZeroAlone).toBe(false);
    }
  });

  it("asks for a second person where a held switch is out of reach of the point", () => {
    for (const step of order.steps) {
      const isHeld = step.settings.some(({ condition }) => ["open", "close"].includes(condition.set?.S5 ?? ""));
      // Who has put a relay in has both hands free to try it.
      const isProbed = !isAct(step.instrument);
      if (isHeld && isProbed && step.access !== "middle-switch") expect(step.hands).toBe(2);
    }
  });

  it("keeps within the minutes there are", () => {
    expect(probeOrder(vents, complaint, { minutes: 6 }).minutes).toBeLessThanOrEqual(6);
  });

  it("says a figure with what it was read in, where two outcomes of a sweep have the same name", () => {
    const check = vents.checks.find(({ id }) => id === "front-left-open-master")!;
    const { steps } = probeOrder(vents, { check, word: "dead" });
    const words = steps.flatMap(({ sweepOf, outcomes }) => (sweepOf === null ? [] : outcomes.map(({ word }) => word)));
    const figured = words.filter((word) => word.includes(" at "));
    expect(figured.some((word) => word.includes(", "))).toBe(true);
    // Of the positions that differ, the figure is that of the first.
    for (const word of figured) expect(word).toMatch(/^[^,]+ at [^,]+ V(?:, [^,]+)*$/);
    expect(figured.filter((word) => / at .*, .* at /.test(word))).toEqual([]);
  });

  it("is the same for the same circuit", () => {
    expect(probeOrder(vents, complaint)).toEqual(order);
  });

  it("finds the fuse, the switch and the motor of a simple row", () => {
    const simple = probeOrder(ROW, { check: ROW.checks[0]!, word: "dead" });
    const targets = new Set(simple.suspects.map((suspect) => suspect.faults[0]!.target));
    for (const target of ["F1", "S1", "M1", "GP1", "W1", "W3"]) expect(targets).toContain(target);
  });
});

describe("the position table", () => {
  it("reads every pin of a plug in every stand, merged where all read alike", () => {
    const table = positionTable(vents, "X5");
    const stands = standsFor(vents, "X5");
    const told = table.columns.reduce((sum, column) => sum + 1 + column.merged.length, 0);
    expect(told).toBe(stands.length);
    expect(table.rows.map((row) => row.cells.length)).toEqual(table.rows.map(() => table.columns.length));
  });

  // Facts of the trade, common practice, no source
  it("shows a floating pin as drifting and dark both ways, with the plug off", () => {
    const table = positionTable(vents, "X5");
    const apart = table.columns.flatMap((column, index) => (column.plugged ? [] : [index]));
    for (const pin of ["4", "5"]) {
      const row = table.rows.find((each) => each.pin === pin)!;
      for (const index of apart) {
        expect(row.cells[index]).toMatchObject({
          state: "floating",
          volts: null,
          lampToMinus: "dark",
          lampToPlus: "dark",
        });
      }
    }
  });
});
