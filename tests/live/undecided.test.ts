import { describe, expect, it } from "vitest";
import { liveOf } from "../../core/live/live.ts";
import { G1, vehicle } from "./vehicle.ts";

/** A module whose output `out` drives high by a rule that waits for `in`, which nothing joins to anything. */
const U1 = {
  id: "U1",
  kind: "module",
  terminals: ["30", "31", "in", "out"],
  pins: { "30": "supply", "31": "ground", in: "unknown", out: "drives-high" },
} as const;
const circuit = vehicle(
  [G1, U1, { id: "E1", kind: "lamp" }],
  ["W1 G1.+ U1.30", "W2 U1.31 G1.-", "W3 U1.out E1.1", "W4 E1.2 G1.-"],
);

describe("an output that nothing decides", () => {
  it("leaves its wire undecided, with the range of volts that its settings give", () => {
    const wire = liveOf(circuit).wires.get("W3")!;
    expect(wire.state).toEqual(["undecided", "undecided"]);
    expect(wire.volts).toEqual([null, null]);
    expect(wire.range[0]?.[0]).toBeCloseTo(0, 6);
    expect(wire.range[0]?.[1]).toBeGreaterThan(12);
  });

  it("is decided by driving it, though a module's pin is never firm", () => {
    const driven = liveOf(circuit, { drive: { "U1.out": "on" } }).wires.get("W3")!;
    expect(driven.state).toEqual(["between", "between"]);
    expect(driven.volts[0]).toBeGreaterThan(12);
    expect(liveOf(circuit, { drive: { "U1.out": "off" } }).wires.get("W3")?.state[0]).toBe("grounded-through-load");
  });
});
