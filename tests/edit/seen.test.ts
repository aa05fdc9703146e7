import { describe, expect, test } from "vitest";
import { sentence } from "../../core/base/words.ts";
import { problemsOf } from "../../core/circuit/check.ts";
import { seenDifferences } from "../../core/circuit/seen.ts";
import { type Bench, benchFor } from "../../core/edit/bench.ts";
import { changeColourCodes } from "../../core/edit/commands/changeColourCodes.ts";
import { drawWireToWire } from "../../core/edit/commands/drawWireToWire.ts";
import { duplicateThings } from "../../core/edit/commands/duplicateThings.ts";
import { noteSeen } from "../../core/edit/commands/noteSeen.ts";
import { reattachWire } from "../../core/edit/commands/reattachWire.ts";
import { recolourWire } from "../../core/edit/commands/recolourWire.ts";
import { circuitOf, formatCircuit } from "../../schemas/circuit.ts";
import { after, got, VENTS } from "./given.ts";

const bench = benchFor(VENTS);
const wire = (of: Bench, id = "W13") => of.circuit.wires.find((each) => each.id === id)!;
const listed = ({ circuit }: Bench) =>
  problemsOf(circuit)
    .filter(({ code }) => code.startsWith("seen-"))
    .map(sentence);
const other = after(bench, noteSeen(bench, ["W13"], { colour: "bn", to: "X5-3" }));

describe("what was seen on the vehicle", () => {
  test("that differs from the print is listed, colour and place each in a sentence", () => {
    const { colour, to } = wire(bench);
    expect(listed(other)).toEqual([
      `W13 is printed ${colour} and was seen BN on the vehicle.`,
      `W13 is printed at ${to} and was seen at X5-3 on the vehicle.`,
    ]);
    expect(wire(other).colour).toBe(colour);
  });

  test("as printed it is a mark and no difference, whichever way it was typed", () => {
    const { colour = "", from, to } = wire(bench);
    const same = after(bench, noteSeen(bench, ["W13"], { colour: colour.toLowerCase(), from, to }));
    expect(wire(same).seen).toEqual({});
    expect(listed(same)).toEqual([]);
  });

  test("one field at a time leaves the others, and the empty text takes it back", () => {
    const more = after(other, noteSeen(other, ["W13"], { from: "7" }));
    expect(wire(more).seen).toEqual({ colour: "BN", from: "7", to: "3" });
    expect(wire(after(more, noteSeen(more, ["W13"], { colour: "" }))).seen).toEqual({ from: "7", to: "3" });
  });

  test("is no difference any more once the print is corrected", () => {
    const mended = after(other, recolourWire(other, "W13", "BN"));
    expect(seenDifferences(wire(mended)).map(({ what }) => what)).toEqual(["to"]);
  });

  test("is written in the codes of the circuit, and comes back from the file", () => {
    const german = after(other, changeColourCodes(other, "german"));
    expect(wire(german).seen).toEqual({ colour: "br", to: "3" });
    const read = got(circuitOf(JSON.parse(formatCircuit(german.circuit))));
    expect(read.wires.find(({ id }) => id === "W13")?.seen).toEqual({ colour: "br", to: "3" });
  });

  test("stays with the wire and not with its copies; a place goes with the end that is put elsewhere", () => {
    const moved = after(other, reattachWire(other, "W13", "to", "X6-1"));
    expect(wire(moved).seen).toEqual({ colour: "BN" });
    const seen = after(bench, noteSeen(bench, ["W5"], { colour: "BN", from: "8", to: "9" }));
    const cut = after(seen, drawWireToWire(seen, "F2.1", "W5", { x: 46, y: 46 }));
    const [half] = cut.circuit.wires.slice(VENTS.wires.length);
    expect([wire(cut, "W5").seen, half?.seen]).toEqual([
      { colour: "BN", from: "8" },
      { colour: "BN", to: "9" },
    ]);
    const copied = after(other, duplicateThings(other, ["SP1", "S5"], 4, 0));
    expect(copied.circuit.wires.slice(VENTS.wires.length).every(({ seen }) => seen === undefined)).toBe(true);
  });
});
