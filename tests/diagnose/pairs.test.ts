import { describe, expect, it } from "vitest";
import { probeOrder } from "../../core/diagnose/order.ts";
import { progressWords } from "../../core/diagnose/progressWords.ts";
import { parseReading } from "../../core/diagnose/readingText.ts";
import { sharedCauses } from "../../core/diagnose/sharedCauses.ts";
import type { Observation } from "../../core/diagnose/suspects.ts";
import { parseFault } from "../../core/live/fault.ts";
import type { Observed } from "../../core/live/judge.ts";
import { G1, vehicle } from "../live/vehicle.ts";
import { SAMPLE_NAMES, sample } from "../samples/onTheBench.ts";

/** Three lamps, each with a fuse and a ground of its own; all they share is the plug X1. */
const LAMPS = [1, 2, 3];
const bare = vehicle(
  [
    G1,
    ...LAMPS.flatMap((n) => [
      { id: `F${n}`, kind: "fuse", settings: { amps: 10 } },
      { id: `E${n}`, kind: "lamp", settings: { watts: 21 } },
      { id: `GP${n}`, kind: "ground" },
    ]),
    { id: "GP4", kind: "ground" },
  ],
  [
    ...LAMPS.flatMap((n) => [
      `W${n}1 G1.+ F${n}.1`,
      `W${n}2 F${n}.2 X1-${n}a`,
      `W${n}3 X1-${n}b E${n}.1`,
      `W${n}4 E${n}.2 GP${n}.stud`,
    ]),
    "W9 GP4.stud G1.-",
  ],
  {
    checks: LAMPS.map((n) => ({
      id: `lamp-${n}`,
      label: `Lamp ${n} lights`,
      condition: {},
      load: `E${n}`,
      expect: "on",
    })),
  },
);
const circuit = {
  ...bare,
  parts: [...bare.parts, { id: "X1", kind: "connector", terminals: LAMPS.flatMap((n) => [`${n}a`, `${n}b`]) }],
  connectors: [{ id: "X1", label: "", rows: [["1", "2", "3"]] }],
};
const seen = (n: number, word: Observed): Observation => ({ check: circuit.checks[n - 1]!, word });
const pair = "corrosion in X1: pins 1 and 2";

describe("two faults with one cause", () => {
  it("do not stand beside a single fault that explains all", () => {
    const { suspects, cleared } = probeOrder(circuit, seen(1, "dead"));
    expect([...suspects, ...cleared].map(({ title }) => title)).not.toContain(pair);
  });

  it("lead where two are dead that share no more than a plug, and the third works", () => {
    const { suspects } = probeOrder(circuit, seen(1, "dead"), { others: [seen(2, "dead"), seen(3, "works")] });
    expect(suspects[0]!.title).toBe(pair);
    expect(suspects[0]!.faults.length).toBe(2);
    expect(suspects[0]!.repairGroup).toBe("X1|mend the plug");
  });

  it("yield to the plug as a whole where all that it carries is dead", () => {
    const { suspects } = probeOrder(circuit, seen(1, "dead"), { others: [seen(2, "dead"), seen(3, "dead")] });
    const titles = suspects.map(({ title }) => title);
    expect(titles).not.toContain(pair);
    expect(titles).toContain("X1 come apart");
  });

  it("are named where readings clash that they explain", () => {
    const readings = ["X1-1b @ rest : 1.5V", "X1-2b @ rest : 1.5V", "X1-3b @ rest : 12.3V"].flatMap((text) => {
      const read = parseReading(circuit, text);
      return read.ok ? [read.value] : [];
    });
    expect(readings.length).toBe(3);
    const order = probeOrder(circuit, seen(1, "dead"), { readings });
    expect(order.clashes.length).toBeGreaterThan(0);
    expect(order.jointly).toContain(pair);
    expect(order.suspects.map(({ title }) => title)).toContain(pair);
    expect(progressWords(order).some((line) => line.includes("corrosion in X1"))).toBe(true);
  });

  it.each(SAMPLE_NAMES)("of %s are bounded, each of faults it can have", (name) => {
    const whole = sample(name);
    const pairs = sharedCauses(whole);
    expect(pairs.length).toBeGreaterThan(0);
    expect(pairs.length).toBeLessThan(1000);
    expect(new Set(pairs.map(({ id }) => id)).size).toBe(pairs.length);
    for (const { id, faults } of pairs) {
      expect(faults.length).toBe(2);
      for (const text of id.split("+")) expect(parseFault(whole, text).ok).toBe(true);
    }
  });
});
