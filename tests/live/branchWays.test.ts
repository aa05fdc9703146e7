import { describe, expect, test } from "vitest";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { type Branch, type BranchRow, branchOf } from "../../core/live/branch.ts";
import { otherPositions } from "../../core/live/branchElsewhere.ts";
import { apartFrom, carriersOf } from "../../core/live/branchRow.ts";
import { parseCondition } from "../../core/live/condition.ts";
import { sample } from "../samples/onTheBench.ts";

function branch(circuit: Circuit, load: string, condition: string): Branch {
  const parsed = parseCondition(circuit, condition);
  const made = parsed.ok ? branchOf(circuit, { load, condition: parsed.value }) : parsed;
  if (!made.ok) throw new Error(`${load} in ${condition} was refused: ${made.refusal.code}`);
  return made.value;
}

function names({ lines }: Branch, line = 0): readonly string[] {
  return lines[line]!.rows.map(({ name }) => name);
}

function rowNamed({ lines }: Branch, name: string): BranchRow {
  const found = lines.flatMap(({ rows }) => rows).find((row) => row.name === name);
  if (!found) throw new Error(`no row ${name}`);
  return found;
}

describe("Where a line begins and ends", () => {
  test("a load on 24 V passes both batteries, one on the centre tap the lower alone", () => {
    const truck = sample("6-truck-trailer");
    expect(names(branch(truck, "E12", "S1=on,S2=left")).slice(0, 3)).toEqual(["G1", "W2", "G2"]);
    expect(names(branch(truck, "E20", ""))).not.toContain("G2");
  });

  test("with the engine running the line begins at the alternator and comes back to it", () => {
    const { rows } = branch(sample("7-charging"), "E3", "S1=on,S2=on,engine:running").lines[0]!;
    expect(rows[0]).toMatchObject({ name: "G2", terminals: ["B-", "B+"] });
    expect(rows.at(-1)!.exit.point).toBe("G2.B-");
  });

  test("both filaments of a lamp are lines, from where they part to where they meet", () => {
    const lamp = branch(sample("2-exterior-lights"), "E5", "S1=parking,S3=pressed");
    expect(lamp.lines.map(({ from, to }) => [from, to])).toEqual([
      [null, null],
      ["F1.2", "E5.31"],
    ]);
  });

  test("a flasher's current goes on through each of its lamps", () => {
    const flasher = branch(sample("6-truck-trailer"), "K1", "S1=on,S2=left");
    expect(names(flasher)).toContain("E1");
    expect(names(flasher, 1)).toContain("E2");
    expect(flasher.lines[1]).toMatchObject({ from: "SP2", to: "chassis" });
  });
});

describe("Which way a part is passed", () => {
  test("a motor that reverses is passed from its other pin, and its wires the other way", () => {
    const vents = sample("1-roof-vents");
    const closing = branch(vents, "M3", "S1=on,S5=close");
    expect(rowNamed(closing, "M3")).toMatchObject({ terminals: ["2", "1"], isLoad: true });
    expect(rowNamed(closing, "W17")).toMatchObject({
      isBack: true,
      entry: { point: "X5-5" },
      exit: { point: "X32-2a" },
    });
    expect(otherPositions(vents, closing)[0]).toMatchObject({
      check: { id: "middle-open-own" },
      parts: [],
      wires: ["W15"],
    });
  });

  test("a load switched on its ground side lies before its switch", () => {
    const blower = names(branch(sample("5-blower"), "M1", "S1=on,S2=speed-1"));
    expect(blower.indexOf("M1")).toBeLessThan(blower.indexOf("R1"));
    expect(blower.indexOf("R1")).toBeLessThan(blower.indexOf("S2"));
  });
});

describe("What is a control's own", () => {
  test("of a coil's line only what the branch does not carry is left, with where it parts and joins", () => {
    const vent = branch(sample("1-roof-vents"), "M3", "S1=on,S5=open");
    const own = apartFrom(vent.controls[0]!.lines[0]!, carriersOf(vent.lines));
    expect(own.rows.map(({ name }) => name)).toEqual(["W9", "S1", "W10", "F2", "W11", "K1", "W12"]);
    expect([own.from, own.to]).toEqual(["F1.2", "GP1.stud"]);
  });

  test("a relay at rest in the line has a coil without current", () => {
    const gate = branch(sample("9-liftgate"), "M1", "S1=on,S2.up=pressed");
    const resting = gate.controls.find(({ part }) => part === "K2");
    expect(resting).toMatchObject({ sort: "coil", state: "released", goodAmps: 0 });
  });
});

describe("Faults", () => {
  test("a contact that does not close is shown open where it should be closed", () => {
    const vents = sample("1-roof-vents");
    const burnt = branchOf(vents, {
      load: "M3",
      condition: { set: { S1: "on", S5: "open" } },
      faults: [{ target: "S5", mode: "stuck-open-4-6" }],
    });
    expect(burnt.ok && rowNamed(burnt.value, "S5")).toMatchObject({ isClosed: false });
  });
});
