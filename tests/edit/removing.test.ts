import { describe, expect, test } from "vitest";
import { problemsOf } from "../../core/circuit/check.ts";
import { benchFor } from "../../core/edit/bench.ts";
import { chooseComplaint } from "../../core/edit/commands/chooseComplaint.ts";
import { observeCheck } from "../../core/edit/commands/observeCheck.ts";
import { plantFault } from "../../core/edit/commands/plantFault.ts";
import { pullApart } from "../../core/edit/commands/pullApart.ts";
import { removeThings } from "../../core/edit/commands/removeThings.ts";
import { takeOut } from "../../core/edit/commands/takeOut.ts";
import { throwControl } from "../../core/edit/commands/throwControl.ts";
import { after, afterAll, got, LATCH, SMALL, VENTS } from "./given.ts";

const named = (id: string) => new RegExp(`"${id}(?:[.:-][^"]*)?"`);

describe("taking a part out", () => {
  const check = VENTS.checks.find(({ condition }) => condition.set?.S5 !== undefined)!;
  const bench = afterAll(
    VENTS,
    (at) => throwControl(at, "S1", "on"),
    (at) => throwControl(at, "S5", "open"),
    (at) => pullApart(at, "X5"),
    (at) => takeOut(at, "F5"),
    (at) => plantFault(at, "X5-6:backed-out"),
    (at) => plantFault(at, "W13:open"),
    (at) => plantFault(at, "M1:seized"),
    (at) => chooseComplaint(at, check.id),
    (at) => observeCheck(at, check.id, "dead"),
  );
  const next = after(bench, removeThings(bench, ["S5"]));

  test("takes out all that hangs on it and every name of it", () => {
    const text = JSON.stringify({ ...next, circuit: { ...next.circuit, connectors: [], parts: [] } });
    for (const id of ["S5", "X5", "W13"]) expect(text).not.toMatch(named(id));
    expect(next.circuit.parts.map(({ id }) => id)).not.toContain("S5");
    expect(next.circuit.connectors.map(({ id }) => id)).not.toContain("X5");
    expect(next.circuit.checks).not.toContainEqual(check);
    expect([next.complaint, next.observed]).toEqual([null, {}]);
  });

  test("leaves what names other things, and goes on from where all stands", () => {
    expect(next.condition).toEqual({ set: { S1: "on" }, out: ["F5"] });
    expect(next.faults).toEqual([{ target: "M1", mode: "seized" }]);
    expect(next.before.now.K1).toBe("pulled-in");
    expect(next.circuit.parts).toHaveLength(VENTS.parts.length - 1);
  });

  test("says how many function checks go with it", () => {
    const gone = VENTS.checks.length - next.circuit.checks.length;
    expect(gone).toBeGreaterThan(1);
    expect(got(removeThings(bench, ["S5"])).name).toBe(`remove switch S5 and ${gone} function checks`);
  });
});

test("a connector alone that goes leaves its wires on the terminals", () => {
  const bench = benchFor(SMALL);
  const next = after(bench, removeThings(bench, ["X1"]));
  const ends = next.circuit.wires.map(({ id, from, to }) => `${id} ${from} ${to}`);
  expect(ends).toContain("W2 F1.2 S1.1");
  expect(ends).toContain("W3 S1.2 X2-1a");
  expect(next.circuit.reach).not.toHaveProperty("X1-1");
  expect(next.circuit.placement.wires).toEqual(SMALL.placement.wires);
  // The scene pulled the plug apart among other things: it stays without that.
  expect(next.circuit.scenes[0]!.condition).toEqual({ set: { S1: "on" }, out: ["F1"], batteryOff: true, ambientC: 20 });
});

test("a part that goes leaves the focus of a scene, and what is left of it stays", () => {
  const scene = { label: "On", condition: { set: { S1: "on" } }, focus: ["M1", "S1"] };
  const bench = benchFor({ ...SMALL, scenes: [scene] });
  expect(after(bench, removeThings(bench, ["M1"])).circuit.scenes).toEqual([{ ...scene, focus: ["S1"] }]);
});

test("questions go with the points they ask for; where only the plug goes, they ask at the part", () => {
  const questions = [
    { asks: "state", point: "M1.1" },
    { asks: "volts", point: "X1-2", black: "battery -" },
    { asks: "volts", point: "X1-2", black: "M1.1" },
  ] as const;
  const bench = benchFor({ ...SMALL, scenes: [{ label: "At rest", condition: {}, questions }] });
  const left = (id: string) => after(bench, removeThings(bench, [id])).circuit.scenes[0]?.questions;
  expect(left("M1")).toEqual([questions[1]]);
  expect(left("X1")).toEqual([questions[0], { ...questions[1], point: "S1.2" }, { ...questions[2], point: "S1.2" }]);
  expect(left("W2")).toEqual(questions);
});

test("a scene of which nothing is left goes", () => {
  const circuit = { ...SMALL, scenes: [{ label: "On", condition: { set: { S1: "on" } } }] };
  const bench = benchFor(circuit);
  expect(after(bench, removeThings(bench, ["S1"])).circuit.scenes).toEqual([]);
  expect(after(bench, removeThings(bench, ["M1"])).circuit.scenes).toEqual(circuit.scenes);
});

test("a plug that still carries another part keeps its other cavities", () => {
  const circuit = {
    ...SMALL,
    connectors: [
      { id: "X1", rows: [["1", "2", "3", "4"]], cavities: { "1": "S1.1", "2": "S1.2", "3": "S1.3", "4": "F1.2" } },
      SMALL.connectors[1]!,
    ],
    wires: SMALL.wires.map((wire) => (wire.id === "W2" ? { ...wire, from: "X1-4" } : wire)),
  };
  const bench = benchFor(circuit);
  const next = after(bench, removeThings(bench, ["S1"])).circuit;
  expect(next.connectors.find(({ id }) => id === "X1")?.cavities).toEqual({ "4": "F1.2" });
  expect(next.wires.map(({ id }) => id)).not.toContain("W2");
});

test("a splice left with two legs stays, and a relay that held itself stays in", () => {
  const bench = benchFor(VENTS);
  const wires = VENTS.wires.filter(({ from, to }) => `${from} ${to}`.includes("SP1.")).map(({ id }) => id);
  const next = after(bench, removeThings(bench, wires.slice(0, -2)));
  expect(next.circuit.parts.map(({ id }) => id)).toContain("SP1");
  const held = afterAll(LATCH, (at) => throwControl(at, "S1", "in"));
  expect(after(held, removeThings(held, ["E1"])).before.now.K1).toBe("pulled-in");
});

test("no part of any sample leaves a wire or name behind", () => {
  const bench = benchFor(VENTS);
  for (const { id } of VENTS.parts) {
    const { circuit } = after(bench, removeThings(bench, [id]));
    const codes = problemsOf(circuit).map(({ code }) => code);
    for (const code of ["wire-to-nowhere", "reach-unknown", "check-without-work"])
      expect(codes, id).not.toContain(code);
  }
});
