import { describe, expect, test } from "vitest";
import { type Bench, benchFor } from "../../core/edit/bench.ts";
import { addScene } from "../../core/edit/commands/addScene.ts";
import { plantFault } from "../../core/edit/commands/plantFault.ts";
import { pullApart } from "../../core/edit/commands/pullApart.ts";
import { renameConnector } from "../../core/edit/commands/renameConnector.ts";
import { renamePart } from "../../core/edit/commands/renamePart.ts";
import { renameWire } from "../../core/edit/commands/renameWire.ts";
import { replaceKind } from "../../core/edit/commands/replaceKind.ts";
import { takeOut } from "../../core/edit/commands/takeOut.ts";
import { throwControl } from "../../core/edit/commands/throwControl.ts";
import { liveNow } from "../../core/edit/liveNow.ts";
import type { Part } from "../../core/parts/kind.ts";
import { vehicle } from "../live/vehicle.ts";
import { after, afterAll, expectAlike, frozen, SMALL, VENTS } from "./given.ts";

const busy = afterAll(
  VENTS,
  (at) => throwControl(at, "S1", "on"),
  (at) => throwControl(at, "S2.middle", "open"),
  (at) => pullApart(at, "X30"),
  (at) => takeOut(at, "F5"),
  (at) => plantFault(at, "X32-1:corroded=2"),
  (at) => plantFault(at, "W7:crossed=W9"),
  (at) => plantFault(at, "K1:welded"),
  (at) =>
    addScene(at, {
      label: "One vent",
      focus: ["S2", "S5", "M3"],
      questions: [
        { asks: "state", point: "M3.1" },
        { asks: "volts", point: "X5-6", black: "SP1.1" },
        { asks: "lamp", point: "X5-4", lampTo: "battery -", lamp: "4 A lamp" },
      ],
    }),
);

/** The bench with every name of an id replaced in its text, wherever it stands. */
function replaced(bench: Bench, id: string, next: string): Bench {
  const text = JSON.stringify(bench).replaceAll(new RegExp(`"${id}(?=["."-])`, "g"), `"${next}`);
  return JSON.parse(text);
}

describe("a rename", () => {
  const cases = [
    // B1 is a terminal of S2 too, which a replaced text cannot tell from the part.
    ...VENTS.parts.filter(({ id }) => id !== "B1").map(({ id }) => [id, renamePart] as const),
    ...VENTS.wires.map(({ id }) => [id, renameWire] as const),
    ...VENTS.connectors.map(({ id }) => [id, renameConnector] as const),
  ];

  test("of anything in sample 1 reaches every place where its name stands, and no other", () => {
    for (const [id, rename] of cases) {
      expect(frozen(after(busy, rename(busy, id, "Q7"))), id).toEqual(replaced(busy, id, "Q7"));
    }
  });

  test("changes nothing that current does", () => {
    for (const id of ["K1", "S2", "X32", "M3", "SP1"]) {
      expectAlike(liveNow(after(busy, renamePart(busy, id, "Q7"))).now, liveNow(busy).now);
    }
  });

  test("takes page links along that are called after the part, but joins no nets", () => {
    const link = (id: string, name: string): Part => ({ id, kind: "page-link", settings: { name } });
    const parts = [
      { id: "K1", kind: "relay" },
      link("L1", "K1.87"),
      link("L2", "K1.87"),
      link("L3", "K10"),
      link("L4", "K1"),
    ];
    const bench = benchFor(vehicle([...parts, link("L5", "K8")], []));
    const names = (of: Bench) => of.circuit.parts.slice(1).map(({ settings }) => settings?.name);
    expect(names(after(bench, renamePart(bench, "K1", "K9")))).toEqual(["K9.87", "K9.87", "K10", "K9", "K8"]);
    expect(names(after(bench, renamePart(bench, "K1", "K8")))).toEqual(["K8.87", "K8.87", "K10", "K1", "K8"]);
  });
});

describe("another kind", () => {
  const bench = benchFor(SMALL);
  const part = (of: Bench, id: string) => of.circuit.parts.find((each) => each.id === id);

  test("keeps wires by name, label and the settings that mean the same", () => {
    const next = after(bench, replaceKind(bench, "F1", "breaker"));
    expect(part(next, "F1")).toEqual({ id: "F1", kind: "breaker", settings: { amps: 10 } });
    expect(next.circuit.wires).toEqual(SMALL.wires);
    // The amps of a fuse are its rating, those of a motor what it draws.
    expect(part(after(bench, replaceKind(bench, "F1", "motor")), "F1")).toEqual({ id: "F1", kind: "motor" });
  });

  test("takes wires, cavities and reach over in order where the names differ", () => {
    const next = after(bench, replaceKind(bench, "M1", "led")).circuit;
    expect(next.wires.find(({ id }) => id === "W4")?.to).toBe("M1.A");
    expect(next.wires.find(({ id }) => id === "W5")?.from).toBe("M1.K");
    expect(Object.keys(next.reach)).toEqual(["S1", "X1-1", "X2-1", "M1.A"]);
  });

  test("keeps the table of a switch where the new kind follows one, and lets go of what it does not know", () => {
    const switched = after(bench, replaceKind(bench, "S1", "limit-switch")).circuit;
    expect(switched.parts[2]).toEqual({ ...SMALL.parts[2], kind: "limit-switch" });
    expect(switched.checks).toEqual(SMALL.checks);
    const drawn = after(bench, replaceKind(bench, "F1", "switch"));
    expect(part(drawn, "F1")?.positions?.map(({ name }) => name)).toEqual(["off", "on"]);
    const idle = after(bench, replaceKind(bench, "M1", "resistor")).circuit;
    expect(idle.checks).toEqual([]);
  });
});
