import { describe, expect, it } from "vitest";
import { probeOrder } from "../../core/diagnose/order.ts";
import { probeText, type Reading, readingOf } from "../../core/diagnose/reading.ts";
import { parseReading, readingText } from "../../core/diagnose/readingText.ts";
import { readWith } from "../../core/diagnose/reads.ts";
import { repairsOf } from "../../core/diagnose/repairs.ts";
import type { Step } from "../../core/diagnose/step.ts";
import { suspectsFor } from "../../core/diagnose/suspects.ts";
import { conditionText } from "../../core/live/condition.ts";
import { parseFault } from "../../core/live/fault.ts";
import { G1, makeSwitch, vehicle } from "../live/vehicle.ts";
import { trials } from "../long.ts";
import { SAMPLE_NAMES as SAMPLES, sample } from "../samples/onTheBench.ts";
import { probesOf, search } from "./simulate.ts";

/** A fuse that feeds two lamps by way of a switch, each through a plug of its own. */
const LAMPS = vehicle(
  [
    G1,
    { id: "F1", kind: "fuse", settings: { amps: 10 } },
    makeSwitch("S1"),
    { id: "SP1", kind: "splice", terminals: ["1", "2", "3"] },
    { id: "E1", kind: "lamp", settings: { watts: 5 } },
    { id: "E2", kind: "lamp", settings: { watts: 5 } },
    { id: "GP1", kind: "ground" },
    { id: "GP2", kind: "ground" },
  ],
  [
    "W1 G1.+ F1.1",
    "W2 F1.2 S1.1",
    "W3 S1.2 SP1.1",
    "W4 SP1.2 X1-1a",
    "W5 SP1.3 X2-1a",
    "W6 X1-1b E1.1",
    "W7 X2-1b E2.1",
    "W8 E1.2 GP1.stud",
    "W9 E2.2 GP1.stud",
    "W10 GP2.stud G1.-",
  ],
  {
    checks: [{ id: "lights", label: "The lamp lights", condition: { set: { S1: "on" } }, load: "E1", expect: "on" }],
  },
);
const withPlugs = {
  ...LAMPS,
  parts: [
    ...LAMPS.parts,
    { id: "X1", kind: "connector", terminals: ["1a", "1b"] },
    { id: "X2", kind: "connector", terminals: ["1a", "1b"] },
  ],
  connectors: [
    { id: "X1", label: "", rows: [["1"]] },
    { id: "X2", label: "", rows: [["1"]] },
  ],
};
const complaint = { check: LAMPS.checks[0]!, word: "blows-its-fuse" } as const;
const inPlace = { red: "F1.1", black: "F1.2", instrument: "4 A lamp", lampTo: "black" } as const;

function lampBurns(fault: string, condition: string): string | null {
  const text = `F1.1/F1.2 @ ${condition} : dark`;
  const probe = parseReading(withPlugs, text);
  const planted = parseFault(withPlugs, fault);
  if (!probe.ok || !planted.ok) throw new Error(`${text} with ${fault}`);
  return readWith(withPlugs, [planted.value], complaint.check.condition, probe.value).shows.word;
}

describe("a lamp in a fuse's place", () => {
  // Facts of the trade: the lamp is bright as long as the short is on the wire, and goes out where it is parted from it.
  it.each([
    ["W7:short-to-ground", "S1=on,out:F1", "bright"],
    ["W7:short-to-ground", "S1=on,out:F1,apart:X1", "bright"],
    ["W7:short-to-ground", "S1=on,out:F1,apart:X2", "dark"],
    ["W7:short-to-ground", "out:F1", "dark"],
    ["W2:short-to-ground", "out:F1", "bright"],
    ["W3:short-to-ground", "S1=on,out:F1,apart:X2", "bright"],
    ["W1:open", "S1=on,out:F1", "dark"],
  ])("with %s, %s, is %s", (fault, condition, burns) => {
    expect(lampBurns(fault, condition)).toBe(burns);
  });

  it("is offered with each plug of the branch parted, where the fuse is out and nothing else", () => {
    const { steps } = probeOrder(withPlugs, complaint);
    const lamps = steps.filter(({ lampTo }) => lampTo === "black");
    expect(lamps.length).toBeGreaterThan(0);
    for (const { point, black, instrument, settings, cautions } of lamps) {
      expect({ red: point, black, instrument }).toEqual({ red: "F1.1", black: "F1.2", instrument: "4 A lamp" });
      expect(settings[0]!.condition.out).toEqual(["F1"]);
      expect(cautions.some((caution) => caution.includes("in place of the fuse"))).toBe(true);
    }
    const parted = lamps.map(({ settings }) => conditionText(settings[0]!.condition));
    expect(parted).toContain("S1=on,apart:X2,out:F1");
  });

  it("finds the branch that a wire is shorted in", () => {
    for (const fault of ["W2", "W3", "W7"]) {
      const truth = suspectsFor(withPlugs, complaint).find(
        ({ possible }) => possible.id === `${fault}:short-to-ground`,
      )!;
      const { order, isFound } = search(withPlugs, complaint, truth.possible);
      expect(isFound).toBe(true);
      const left = repairsOf(order.suspects).filter(({ share }) => share > 0.05);
      expect(left.length).toBeLessThanOrEqual(3);
    }
  });

  it("is spelt with both blades and read back", () => {
    const condition = { set: { S1: "on" }, apart: ["X2"], out: ["F1"] };
    const reading = readingOf({ ...inPlace, condition }, { volts: null, word: "bright" });
    const text = readingText(withPlugs, reading);
    expect(text).toBe("F1.1/F1.2 @ S1=on,apart:X2,out:F1 : bright");
    const back = parseReading(withPlugs, text);
    expect(back.ok && probeText(back.value)).toBe(probeText(reading));
  });
});

describe("a fuse that blows", () => {
  it.each(SAMPLES)("on %s, is led back to its short, a few repairs left at most", (name) => {
    const circuit = sample(name);
    const blows = { check: circuit.checks[0]!, word: "blows-its-fuse" } as const;
    const suspected = suspectsFor(circuit, blows);
    const ends = suspected
      .filter((_, index) => index % trials(8, 4) === 0)
      .map(({ possible }) => ({ id: possible.id, ...search(circuit, blows, possible) }));
    expect(ends.filter(({ isFound }) => !isFound).map(({ id }) => id)).toEqual([]);
    const left = ends.map(({ order }) => repairsOf(order.suspects).filter(({ share }) => share > 0.02).length);
    const mean = left.reduce((sum, count) => sum + count, 0) / left.length;
    console.log(`${name}: ${suspected.length} suspects, ${mean.toFixed(1)} repairs left in the mean`);
    expect(mean).toBeLessThanOrEqual(6);
  });

  it("is not asked for a lamp where nothing that is suspected melts it", () => {
    const { steps } = probeOrder(withPlugs, { check: LAMPS.checks[0]!, word: "weak" });
    expect(steps.some(({ lampTo }: Step) => lampTo === "black")).toBe(false);
  });

  it("is found out by a look where the complaint was that nothing works, and the lamp asked for from then on", () => {
    const dead = { check: LAMPS.checks[0]!, word: "dead" } as const;
    const before = probeOrder(withPlugs, dead);
    expect(before.steps.some(({ lampTo }) => lampTo === "black")).toBe(false);
    const blown = parseReading(withPlugs, "F1 @ : blown");
    const { steps } = probeOrder(withPlugs, dead, { readings: blown.ok ? [blown.value] : [] });
    expect(steps.some(({ lampTo }) => lampTo === "black")).toBe(true);
  });

  it("is not probed again as it was", () => {
    const first = probeOrder(withPlugs, complaint).steps.find(({ lampTo }) => lampTo === "black")!;
    const readings = probesOf(first).map((probe): Reading => readingOf(probe, { volts: null, word: "bright" }));
    const again = probeOrder(withPlugs, complaint, { readings }).steps.flatMap(probesOf).map(probeText);
    expect(again).not.toContain(probeText(readings[0]!));
  });
});
