import { describe, expect, test } from "vitest";
import { type Bench, benchFor } from "../../core/edit/bench.ts";
import { changePins } from "../../core/edit/commands/changePins.ts";
import { changePositions } from "../../core/edit/commands/changePositions.ts";
import { changeTerminals } from "../../core/edit/commands/changeTerminals.ts";
import { plantFault } from "../../core/edit/commands/plantFault.ts";
import { removeControl } from "../../core/edit/commands/removeControl.ts";
import { renameControl } from "../../core/edit/commands/renameControl.ts";
import { throwControl } from "../../core/edit/commands/throwControl.ts";
import { liveNow } from "../../core/edit/liveNow.ts";
import {
  joinToggled,
  type Positions,
  positionAdded,
  positionMoved,
  positionRemoved,
  positionRenamed,
  positionSprings,
} from "../../core/edit/positionTable.ts";
import type { Part } from "../../core/parts/kind.ts";
import { makeSwitch } from "../live/vehicle.ts";
import { after, afterAll, LATCH, SMALL, VENTS } from "./given.ts";

const part = ({ circuit }: Bench, id: string): Part => circuit.parts.find((each) => each.id === id)!;
const check = ({ circuit }: Bench, id: string) => circuit.checks.find((each) => each.id === id);
const S1 = (SMALL.parts.find(({ id }) => id === "S1")?.positions ?? []) as Positions;

describe("a table of positions", () => {
  test("joins and parts two terminals, spelled as elsewhere in the table", () => {
    const joined = joinToggled(S1, 0, "2", "1");
    expect(joined[0]!.joins).toEqual([
      ["2", "3"],
      ["1", "2"],
    ]);
    expect(joinToggled(joined, 0, "1", "2")).toEqual(S1);
    expect(joinToggled(S1, 2, "3", "1")[2]!.joins).toEqual([
      ["1", "2"],
      ["3", "1"],
    ]);
    expect(joinToggled(S1, 9, "3", "1")).toEqual(S1);
  });

  test("renames a position with what springs back to it", () => {
    const next = positionRenamed(S1, 0, "rest");
    expect(next.map(({ name, springsBackTo }) => [name, springsBackTo])).toEqual([
      ["rest", undefined],
      ["on", undefined],
      ["once", "rest"],
    ]);
    expect(positionRenamed(S1, 9, "rest")).toBe(S1);
  });

  test("adds, moves and removes positions; the first is rest and latches", () => {
    expect(positionAdded(S1, "slow", 1).map(({ name }) => name)).toEqual(["off", "slow", "on", "once"]);
    const moved = positionMoved(S1, 2, 0);
    expect(moved.map(({ name }) => name)).toEqual(["once", "off", "on"]);
    expect(moved[0]).toEqual({ name: "once", joins: [["1", "2"]] });
    expect(positionMoved(S1, 9, 0)).toBe(S1);
    expect(positionRemoved(S1, 0).map(({ springsBackTo }) => springsBackTo)).toEqual([undefined, "on"]);
    expect(positionRemoved(positionRemoved(S1, 0), 0)).toEqual([{ name: "once", joins: [["1", "2"]] }]);
    expect(positionSprings(S1, 1, "off")[1]!.springsBackTo).toBe("off");
    expect(positionSprings(S1, 2, null)[2]).toEqual({ name: "once", joins: [["1", "2"]] });
  });
});

describe("changing a table", () => {
  test("renames a position in the condition, checks, scenes and faults", () => {
    const bench = afterAll(
      SMALL,
      (now) => throwControl(now, "S1", "on"),
      (now) => plantFault(now, "S1:left-in-on"),
      (now) => changePositions(now, "S1", "", positionRenamed(S1, 1, "run")),
    );
    expect(bench.condition).toEqual({ set: { S1: "run" } });
    expect(bench.before.condition).toEqual({ set: { S1: "run" } });
    expect(bench.faults).toEqual([{ target: "S1", mode: "left-in-run" }]);
    expect(check(bench, "wiper-on")!.condition).toEqual({ set: { S1: "run" } });
    expect(bench.circuit.scenes[0]!.condition.set).toEqual({ S1: "run" });
  });

  test("of a panel leaves its other controls, and drops what names a position that is gone", () => {
    const bench = afterAll(
      VENTS,
      (now) => throwControl(now, "S2.middle", "open"),
      (now) => throwControl(now, "S2.rear", "open"),
      (now) => changePositions(now, "S2", "middle", [{ name: "rest", joins: [["C1", "31"]] }]),
    );
    expect(bench.condition).toEqual({ set: { "S2.rear": "open" } });
    expect(bench.circuit.checks.length).toBeLessThan(VENTS.checks.length);
    expect(JSON.stringify(bench.circuit.checks)).not.toContain("S2.middle");
    expect(bench.circuit.wires).toEqual(VENTS.wires);
  });

  test("keeps a relay that holds itself in", () => {
    const held = afterAll(
      LATCH,
      (now) => throwControl(now, "S1", "in"),
      (now) => changePositions(now, "S1", "", positionRenamed(part(now, "S1").positions!, 0, "away")),
      (now) => throwControl(now, "S1", "away"),
    );
    expect(liveNow(held).shown.parts.get("K1")!.state).toBe("pulled-in");
  });

  test("keeps terminals that the table alone had named", () => {
    const circuit = { ...LATCH, parts: LATCH.parts.map((each) => (each.id === "S1" ? makeBare(each) : each)) };
    const bench = after(benchFor(circuit), changePositions(benchFor(circuit), "S1", "", [{ name: "out", joins: [] }]));
    expect(part(bench, "S1").terminals).toEqual(["2", "1"]);
  });

  test("a second control gives the first its name in conditions", () => {
    const one = { ...makeSwitch("S1"), terminals: ["1", "2", "3"] };
    const { positions = [], ...bare } = one;
    const panel: Part = { ...bare, controls: [{ name: "left", positions }] };
    const circuit = { ...LATCH, parts: LATCH.parts.map((each) => (each.id === "S1" ? panel : each)) };
    const start: Bench = { ...benchFor(circuit), condition: { set: { S1: positions[1]!.name } } };
    const bench = after(start, changePositions(start, "S1", "right", [{ name: "off", joins: [] }]));
    expect(bench.condition).toEqual({ set: { "S1.left": positions[1]!.name } });
  });
});

describe("controls of a panel", () => {
  const start = afterAll(
    VENTS,
    (now) => throwControl(now, "S2.middle", "open"),
    (now) => throwControl(now, "S2.rear", "open"),
  );

  test("called otherwise are called so in conditions, checks and scenes", () => {
    const bench = after(start, renameControl(start, "S2", "middle", "centre", "Centre"));
    expect(bench.condition).toEqual({ set: { "S2.centre": "open", "S2.rear": "open" } });
    expect(bench.circuit.checks).toHaveLength(VENTS.checks.length);
    expect(JSON.stringify(bench.circuit)).not.toContain("S2.middle");
  });

  test("taken out take along what names them; the last one left is called after the part alone", () => {
    let bench = start;
    for (const name of ["lock-out", "front-left", "front-right", "middle"]) {
      bench = after(bench, removeControl(bench, "S2", name));
    }
    expect(bench.condition).toEqual({ set: { S2: "open" } });
    expect(
      bench.circuit.checks.every(({ condition }) =>
        Object.keys(condition.set ?? {}).every((key) => !key.includes(".")),
      ),
    ).toBe(true);
    expect(bench.circuit.checks.some(({ condition }) => condition.set?.S2 === "open")).toBe(true);
    expect(bench.circuit.wires).toEqual(VENTS.wires);
  });

  test("a plain switch becomes a panel of one", () => {
    const plain = after(start, renameControl(start, "S5", "", "own"));
    expect(part(plain, "S5").controls!.map(({ name }) => name)).toEqual(["own"]);
    const panel = after(plain, changePositions(plain, "S5", "lamp", [{ name: "off", joins: [] }]));
    expect(panel.circuit.checks.some(({ condition }) => condition.set?.["S5.own"] === "open")).toBe(true);
  });
});

function makeBare({ terminals: _, ...rest }: Part): Part {
  return {
    ...rest,
    positions: [
      { name: "out", joins: [] },
      { name: "in", joins: [["2", "1"]], springsBackTo: "out" },
    ],
  };
}

describe("changing terminals", () => {
  test("renames one in place, with its cavity, joins, wires, reach and faults", () => {
    const bench = afterAll(
      SMALL,
      (now) => plantFault(now, "S1:stuck-open-1-2"),
      (now) => changeTerminals(now, "S1", ["A", "2", "3"]),
      (now) => changeTerminals(now, "M1", ["+", "2"]),
    );
    expect(part(bench, "S1").positions![1]!.joins).toEqual([["A", "2"]]);
    expect(bench.circuit.connectors[0]!.cavities).toEqual({ "1": "S1.A", "2": "S1.2", "3": "S1.3" });
    expect(bench.faults).toEqual([{ target: "S1", mode: "stuck-open-A-2" }]);
    expect(bench.circuit.wires.find(({ id }) => id === "W4")!.to).toBe("M1.+");
    expect(Object.keys(bench.circuit.reach)).toEqual(["S1", "X1-1", "X2-1", "M1.+"]);
    expect(bench.circuit.wires).toHaveLength(SMALL.wires.length);
  });

  test("takes the wires of one that goes along, and its joins", () => {
    const start = benchFor(SMALL);
    const bench = after(start, changeTerminals(start, "S1", ["1", "2"]));
    expect(bench.circuit.wires.map(({ id }) => id)).not.toContain("W9");
    expect(part(bench, "S1").positions![0]!.joins).toEqual([]);
    expect(bench.circuit.connectors[0]!.cavities).toEqual({ "1": "S1.1", "2": "S1.2" });
  });

  test("of a module without terminals of its own are its pins", () => {
    const circuit = {
      ...LATCH,
      parts: [...LATCH.parts, { id: "U1", kind: "module" }],
      wires: [...LATCH.wires, { id: "W8", from: "G1.+", to: "U1.30" }, { id: "W9", from: "E1.1", to: "U1.1" }],
    };
    const start = benchFor(circuit);
    const pins = { "30": "supply", "31": "ground", door: "input" } as const;
    const bench = after(start, changePins(start, "U1", pins));
    expect(part(bench, "U1")).toEqual({ id: "U1", kind: "module", pins });
    expect(bench.circuit.wires.find(({ id }) => id === "W8")!.to).toBe("U1.30");
  });
});
