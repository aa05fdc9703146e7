import { describe, expect, test } from "vitest";
import { ASSEMBLY_IDS, assembly } from "../../core/edit/assemblies.ts";
import { benchFor } from "../../core/edit/bench.ts";
import { addAssembly } from "../../core/edit/commands/addAssembly.ts";
import { addPart } from "../../core/edit/commands/addPart.ts";
import { KINDS } from "../../core/parts/catalogue.ts";
import { ghostOf } from "../../renderer/canvas/ghost.ts";
import { standingOnOthers, standsOnWords } from "../../renderer/canvas/standsOn.ts";
import type { Dropping } from "../../renderer/canvas/tool.ts";
import { assemblyMarks } from "../../renderer/draw/assemblyMarks.ts";
import { assembliesFor, kindsFor } from "../../renderer/draw/offers.ts";
import { after, SMALL } from "../edit/given.ts";

const sheet = { circuit: SMALL, look: "iec", page: "p1" } as const;
const fuse: Dropping = { is: "part", kind: "fuse", turn: 0, flip: false };

describe("the catalogue", () => {
  test("finds a kind by the words of the trade, and a ready assembly by its title and by what is in it", () => {
    expect(kindsFor("relay").flatMap(({ kinds }) => kinds.map(({ name }) => name))).toContain("relay");
    expect(assembliesFor("")).toEqual(ASSEMBLY_IDS);
    expect(assembliesFor("ready")).toEqual(ASSEMBLY_IDS);
    expect(assembliesFor("motor")).toEqual(["reversing-switch"]);
    expect(assembliesFor(" Lamp ground ")).toEqual(["lamp-pair"]);
    expect(assembliesFor("submarine")).toEqual([]);
  });

  test("has what is called so before what is only known by that word too", () => {
    const first = (typed: string): string | undefined => kindsFor(typed)[0]?.kinds[0]?.name;
    expect(["horn", "Relay", "diode", "so", "switch"].map(first)).toEqual([
      "horn",
      "relay",
      "diode",
      "solenoid",
      "switch",
    ]);
    expect(kindsFor("").flatMap(({ kinds }) => kinds)[0]).toBe(KINDS[0]);
  });

  test.each(ASSEMBLY_IDS)("draws %s with its wires and without words", (id) => {
    const marks = assemblyMarks(id, 12, "iec");
    expect(marks.some(({ mark }) => mark === "text")).toBe(false);
    for (const wire of assembly(id, 12).wires)
      expect(
        marks.some(({ of }) => of === wire.id),
        wire.id,
      ).toBe(true);
    expect(assemblyMarks(id, 12, "iec")).toBe(marks);
  });
});

describe("what is about to be placed", () => {
  test("says on what it would stand, and nothing where the paper is free", () => {
    expect(ghostOf({ ...sheet, tool: fuse, at: { x: 60, y: 60 } })?.standsOn).toEqual([]);
    const over = ghostOf({ ...sheet, tool: fuse, at: { x: 8, y: 26 } });
    expect(over?.standsOn.map(({ others }) => standsOnWords(others))).toEqual(["Stands on F1"]);
  });

  test("stands where the command then puts it", () => {
    const bench = benchFor(SMALL);
    const { at } = ghostOf({ ...sheet, tool: fuse, at: { x: 60, y: 60 } })!;
    const next = after(bench, addPart(bench, "fuse", "p1", at.x, at.y));
    expect(next.circuit.placement.parts.F2).toMatchObject(at);
  });

  test.each([
    ["free paper", { x: 90, y: 50 }],
    ["a part", { x: 24, y: 25 }],
  ])("an assembly over %s is shown where it lands", (_, at) => {
    const bench = benchFor(SMALL);
    const ghost = ghostOf({ ...sheet, tool: { is: "assembly", assembly: "lamp-pair" }, at })!;
    const next = after(bench, addAssembly(bench, "lamp-pair", "p1", ghost.at.x, ghost.at.y));
    expect(next.circuit.placement.parts.E1).toMatchObject({ x: ghost.at.x, y: ghost.at.y });
    expect(standingOnOthers(next.circuit, "p1", ["E1", "E2", "SP1", "GP3"], 0, 0)).toEqual([]);
  });

  test("what is carried says on what it would stand; what goes along does not count", () => {
    const by = (parts: readonly string[]) =>
      standingOnOthers(SMALL, "p1", parts, 0, -18).map(({ others }) => others.join());
    expect(by(["G1"])).toEqual(["F1"]);
    expect(by(["G1", "F1"])).toEqual([]);
  });
});
