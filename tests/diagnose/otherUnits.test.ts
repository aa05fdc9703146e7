import { describe, expect, it } from "vitest";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { finenessOf } from "../../core/diagnose/evidence.ts";
import { expectedOf } from "../../core/diagnose/expected.ts";
import { figureText, limitText } from "../../core/diagnose/figureText.ts";
import { probeOrder } from "../../core/diagnose/order.ts";
import { figureOf, isReading } from "../../core/diagnose/reading.ts";
import { parseReading, readingText } from "../../core/diagnose/readingText.ts";
import { readWith } from "../../core/diagnose/reads.ts";
import { readValue } from "../../core/diagnose/readValue.ts";
import type { Expected } from "../../core/diagnose/step.ts";
import { OPEN_FROM } from "../../core/trade/instruments.ts";
import { build, cell, faultOf, table } from "../published/build.ts";

// A heater of 48 W at 12 V, 3 ohm, behind a switch and a joint; the wires have the ohms that stand before their ends.
const bare = build(
  "A seat heater",
  12,
  {
    G1: cell(12),
    S1: table({ off: "", on: "1-2" }),
    X1: ["connector", { ways: 2, contactOhms: 0.003 }],
    E1: ["heater", { volts: 12, watts: 48 }],
  },
  ["G1.+ S1.1", "S1.2 (0.1) X1-1a", "X1-1b (0.2) E1.1", "E1.2 (0.3) X1-2b", "X1-2a (0.4) G1.-"],
);
const circuit: Circuit = {
  ...bare,
  connectors: [{ id: "X1", rows: [["1", "2"]] }],
  checks: [{ id: "heats", label: "Seat heats", condition: { set: { S1: "on" } }, load: "E1", expect: "on" }],
};
const complaint = { check: circuit.checks[0]!, word: "dead" } as const;

function read(text: string) {
  const reading = parseReading(circuit, text);
  if (!reading.ok) throw new Error(`${text}: ${reading.refusal.code}`);
  return reading.value;
}

function refusalOf(text: string): string {
  const reading = parseReading(circuit, text);
  return reading.ok ? "" : reading.refusal.code;
}

/** What the probe of a reading shows with a fault planted. */
function shown(text: string, fault = ""): number {
  return figureOf(readWith(circuit, fault === "" ? [] : [faultOf(circuit, fault)], null, read(text)).shows)!;
}

describe("ohms from a parted plug", () => {
  const load = "X1-1b/X1-2b @ apart:X1 : 3.5ohm";
  const leg = "X1-2a @ apart:X1 : 0.4ohm";

  it("are those of the load with both its wires, 0.2 + 3 + 0.3, and of the leg to the battery, 0.4", () => {
    expect(shown(load)).toBeCloseTo(3.5, 3);
    expect(shown(leg)).toBeCloseTo(0.4, 3);
  });

  it.each([
    [load, "E1:open", OPEN_FROM],
    [load, "W4:open", OPEN_FROM],
    [load, "W3:ohms=2", 5.5],
    [load, "W5:open", 3.5],
    [leg, "W5:open", OPEN_FROM],
    [leg, "W5:ohms=2", 2.4],
    [leg, "E1:open", 0.4],
  ])("%s with %s: %d", (text, fault, ohms) => {
    expect(shown(text, fault)).toBeCloseTo(ohms, 2);
  });

  it("are refused where a lead is fed, and taken there with the battery off", () => {
    expect(refusalOf("X1-1a @ S1=on,apart:X1 : 3ohm")).toBe("reading-live");
    expect(refusalOf("X1-1a/X1-2a @ S1=on : 3ohm")).toBe("reading-live");
    expect(shown("X1-1a/G1.+ @ S1=on,apart:X1,battery:off : 0.1ohm")).toBeCloseTo(0.1, 1);
  });

  it("leave the load and its wires where they read open, and clear them where they are right", () => {
    const share = (readings: readonly string[], ...targets: readonly string[]): number =>
      probeOrder(circuit, complaint, { readings: readings.map(read) })
        .suspects.filter(({ faults }) => targets.includes(faults[0]!.target))
        .reduce((sum, { probability }) => sum + probability, 0);
    const onTheLoad = ["E1", "W3", "W4"];
    expect(share([load.replace("3.5ohm", "open")], ...onTheLoad)).toBeGreaterThan(0.85);
    expect(share([load], ...onTheLoad)).toBeLessThan(0.05);
  });
});

describe("a clamp round a wire", () => {
  const feed = "X1-1a @ S1=on : 3A";

  it("shows 12 V over all ohms in the loop, 4 ohm and what joints and switch have, and nothing where it is open", () => {
    expect(shown(feed)).toBeCloseTo(12 / 4.03, 1);
    expect(shown(feed, "W5:open")).toBe(0);
    // 1.5 ohm more: 12 / 5.5.
    expect(shown(feed, "W5:ohms=1.5")).toBeCloseTo(12 / 5.53, 1);
  });

  it("sees what a wire shorted in its middle takes, on the fed side only", () => {
    expect(shown("S1.2 @ S1=on : 3A", "W2:short-to-ground")).toBeGreaterThan(50);
    expect(shown(feed, "W2:short-to-ground")).toBeLessThan(3);
  });

  it("is refused where it cannot go round one wire", () => {
    expect(refusalOf("battery+ @ S1=on : 3A")).toBe("reading-clamp");
  });
});

describe("what is typed and printed", () => {
  it.each([
    "X1-1b/X1-2b @ apart:X1 : 3.5ohm",
    "X1-1b/X1-2b @ apart:X1 : open",
    "X1-1b/X1-2b @ apart:X1 : 4.7kohm",
    "X1-1a @ S1=on : 2.9A",
    "X1-1a @ S1=on : 0.4A?",
  ])("%s is spelled as it is read", (text) => {
    expect(readingText(circuit, read(text))).toBe(text);
    expect(isReading(read(text))).toBe(true);
  });

  const expectOf = (text: string): Expected => {
    const reading = read(text);
    return expectedOf(circuit, { ...reading, fineness: finenessOf(circuit, reading) });
  };

  it("has a range in its own unit", () => {
    expect(expectOf("X1-1b/X1-2b @ apart:X1 : 3.5ohm")).toMatchObject({ low: 3, high: 4, unit: "ohm" });
    expect(expectOf("X1-1a @ S1=on : 3A")).toMatchObject({ low: 2.5, high: 3.4, unit: "A" });
  });

  it.each([
    ["meter ohms", "1.2", 1.2],
    ["meter ohms", "4.7 kohm", 4700],
    ["meter ohms", "OL", OPEN_FROM],
    ["meter ohms", "11.9 V", "reading-unit"],
    ["meter ohms", "-3", "reading-negative"],
    ["clamp", "400mA", 0.4],
    ["clamp", "-5.2 A", 5.2],
    ["clamp", "3 ohm", "reading-unit"],
  ] as const)("in a row of the %s, %s is %s", (instrument, typed, wanted) => {
    const value = readValue(typed, { instrument, nominalVolts: 12, expect: null });
    expect(value.ok ? figureOf(value.value) : value.refusal.code).toBe(wanted);
  });

  it("says figures and limits with their unit", () => {
    expect(figureText(47, { fineness: "ohms" })).toBe("47 ohm");
    expect(limitText({ low: 0.4, high: 3.1 }, { fineness: "ohms" })).toBe("0.4 to 3.1 ohm");
    expect(limitText({ low: 500_000, high: Number.POSITIVE_INFINITY }, { fineness: "ohms" })).toBe("above 500 kohm");
    expect(limitText({ low: Number.NEGATIVE_INFINITY, high: 1.5 }, { fineness: "amps" })).toBe("below 1.5 A");
    expect(limitText({ low: 4, high: 10.8 }, { fineness: "volts" })).toBe("4.0 to 10.8 V");
  });
});
