import { describe, expect, it } from "vitest";
import { commanded } from "../../core/diagnose/commanded.ts";
import { probeOrder } from "../../core/diagnose/order.ts";
import { parseReading, readingText } from "../../core/diagnose/readingText.ts";
import { repairsOf } from "../../core/diagnose/repairs.ts";
import { complaintOf } from "../../core/diagnose/seen.ts";
import { suspectsFor } from "../../core/diagnose/suspects.ts";
import { faultModes } from "../../core/live/fault.ts";
import { G1, makeSwitch, vehicle } from "../live/vehicle.ts";
import { SAMPLE_NAMES, sample } from "../samples/onTheBench.ts";
import { search } from "./simulate.ts";

/** A module with a fuse, a ground and an input from a switch, whose table does not say when it lights the lamp. */
const circuit = vehicle(
  [
    G1,
    { id: "F1", kind: "fuse", settings: { amps: 10 } },
    { id: "F2", kind: "fuse", settings: { amps: 5 } },
    makeSwitch("S1"),
    { id: "U1", kind: "module", pins: { "30": "supply", "31": "ground", "1": "input", "2": "drives-high" }, table: [] },
    { id: "E1", kind: "lamp", settings: { watts: 5 } },
    { id: "GP1", kind: "ground" },
    { id: "GP2", kind: "ground" },
    { id: "GP3", kind: "ground" },
  ],
  [
    "W1 G1.+ F1.1",
    "W2 F1.2 U1.30",
    "W3 G1.+ F2.1",
    "W4 F2.2 S1.1",
    "W5 S1.2 U1.1",
    "W6 U1.31 GP1.stud",
    "W7 U1.2 E1.1",
    "W8 E1.2 GP2.stud",
    "W9 GP3.stud G1.-",
  ],
  {
    checks: [{ id: "lamp", label: "The lamp lights", condition: { set: { S1: "on" } }, load: "E1", expect: "on" }],
  },
);
const complaint = complaintOf(circuit, circuit.checks[0]!, "dead");

describe("a load that a module decides", () => {
  it("is tried as if the module asked for it", () => {
    expect(complaint.check.condition.drive).toEqual({ "U1.2": "on" });
    expect(commanded(circuit, circuit.checks[0]!)).toBe(complaint.check);
  });

  it("suspects the output, what the module waits for, its feed, its ground and the way on", () => {
    const ids = suspectsFor(circuit, complaint).map(({ possible }) => possible.id);
    for (const id of ["U1:output-dead-2", "U1:not-asked-2", "F1:blown", "W6:open", "W7:open", "W5:open+U1:not-asked-2"])
      expect(ids).toContain(id);
  });

  it("asks the scan tool, and each answer leaves other repairs", () => {
    const { steps } = probeOrder(circuit, complaint);
    const row = steps.find(({ instrument }) => instrument === "scan tool")!;
    expect(row.point).toBe("U1");
    const leftBy = (word: string): readonly string[] =>
      row.outcomes.find((outcome) => outcome.word === word)?.leaves.map(({ id }) => id) ?? [];
    expect(leftBy("no answer")).toContain("F1:blown");
    expect(leftBy("no answer")).toContain("W6:open");
    expect(leftBy("1 high, 2 asked for")).toContain("U1:output-dead-2");
    expect(leftBy("1 high, 2 not asked for")).toEqual(["U1:not-asked-2"]);
    expect(leftBy("1 low, 2 not asked for")).toContain("W5:open+U1:not-asked-2");
  });

  it("leads every suspect to its own repair", () => {
    const missed = suspectsFor(circuit, complaint).filter(
      ({ possible }) => !search(circuit, complaint, possible).isFound,
    );
    expect(missed.map(({ possible }) => possible.id)).toEqual([]);
  });

  it("takes the answer as it is typed, and weighs it", () => {
    const text = "U1 @ S1=on,drive:U1.2=on : 1 high, 2 not asked for";
    const reading = parseReading(circuit, text);
    if (!reading.ok) throw new Error(reading.refusal.code);
    expect(readingText(circuit, reading.value)).toBe(text);
    const { suspects } = probeOrder(circuit, complaint, { readings: [reading.value] });
    expect(repairsOf(suspects)[0]!.repair).toBe("U1|find what it waits for");
  });

  it.each(["1-roof-vents", "9-liftgate"])("is no question on %s, where the table and its wires decide", (name) => {
    const whole = sample(name);
    expect(SAMPLE_NAMES).toContain(name);
    const modes = faultModes(whole, { is: "part", id: "U1" }).map(({ mode }) => mode);
    expect(modes.some((mode) => mode.startsWith("not-asked"))).toBe(false);
  });

  it("is one where an input that the table waits for ends on nothing", () => {
    const whole = sample("9-liftgate");
    const input = whole.wires.filter(
      ({ from, to }) => ![from, to].some((end) => /^(U1\.|X\w+-)?up$/.test(end) || end === "U1.up"),
    );
    const cut = {
      ...whole,
      wires: input.filter(
        ({ from, to }) =>
          !whole.connectors.some(({ id, cavities = {} }) =>
            Object.entries(cavities).some(
              ([cavity, carries]) => carries === "U1.up" && [from, to].includes(`${id}-${cavity}`),
            ),
          ),
      ),
    };
    const modes = faultModes(cut, { is: "part", id: "U1" }).map(({ mode }) => mode);
    expect(modes).toContain("not-asked-buzzer");
  });
});
