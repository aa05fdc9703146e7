import { describe, expect, test } from "vitest";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { terminalSpots } from "../../core/circuit/placeSymbol.ts";
import { type Bench, benchFor } from "../../core/edit/bench.ts";
import { flipPart } from "../../core/edit/commands/flipPart.ts";
import { movePart } from "../../core/edit/commands/movePart.ts";
import { turnPart } from "../../core/edit/commands/turnPart.ts";
import { after, SMALL, VENTS } from "./given.ts";

const place = (bench: Bench, part: string) => bench.circuit.placement.parts[part];
const bends = (bench: Bench, wire: string) => bench.circuit.placement.wires[wire];

/** The small circuit with bends set on one wire, and the spot of one of its ends. */
function bent(wire: string, at: string, set: (x: number, y: number) => readonly (readonly [number, number])[]) {
  const { x, y } = terminalSpots(SMALL, "p1").get(at)!;
  const circuit: Circuit = { ...SMALL, placement: { ...SMALL.placement, wires: { [wire]: set(x, y) } } };
  return { bench: benchFor(circuit), x, y };
}

describe("moving a part", () => {
  test("puts it where it was asked, on whole grid units, and keeps its turn", () => {
    const bench = benchFor(SMALL);
    const moved = after(bench, movePart(bench, "M1", { x: 50.4, y: 30.6 }));
    expect(place(moved, "M1")).toEqual({ page: "p1", x: 50, y: 31, turn: 90, flip: true });
  });

  test("takes an upright leg of its wire along sideways, and leaves the far bends", () => {
    const { bench, x, y } = bent("W2", "F1.2", (left, top) => [
      [left, top - 3],
      [left, top - 6],
      [left + 9, top - 6],
    ]);
    const { x: fx, y: fy } = place(bench, "F1")!;
    expect(bends(after(bench, movePart(bench, "F1", { x: fx + 5, y: fy + 7 })), "W2")).toEqual([
      [x + 5, y - 3],
      [x + 5, y - 6],
      [x + 9, y - 6],
    ]);
  });

  test("takes a level leg along up and down, from whichever end", () => {
    const { bench, x, y } = bent("W4", "M1.1", (left, top) => [
      [left - 20, top + 8],
      [left - 12, top + 8],
      [left - 12, top],
    ]);
    const { x: mx, y: my } = place(bench, "M1")!;
    expect(bends(after(bench, movePart(bench, "M1", { x: mx + 4, y: my + 2 })), "W4")).toEqual([
      [x - 20, y + 8],
      [x - 12, y + 8],
      [x - 12, y + 2],
    ]);
  });

  test("takes a wire from the part to itself along whole", () => {
    const circuit: Circuit = {
      ...SMALL,
      wires: [...SMALL.wires, { id: "W10", from: "M1.1", to: "M1.2", colour: "RD", mm2: 1 }],
      placement: { ...SMALL.placement, wires: { W10: [[70, 10]] } },
    };
    const bench = benchFor(circuit);
    expect(bends(after(bench, movePart(bench, "M1", { x: 61, y: 23 })), "W10")).toEqual([[71, 13]]);
  });

  test("knows the wires that end on the cavity of its terminal", () => {
    const { bench, x, y } = bent("W2", "X1-1", (left, top) => [[left, top - 5]]);
    const { x: sx, y: sy } = place(bench, "S1")!;
    expect(bends(after(bench, movePart(bench, "S1", { x: sx + 2, y: sy })), "W2")).toEqual([[x + 2, y - 5]]);
  });

  test("to another page drops the bends of its wires, so that they are laid anew", () => {
    const { bench } = bent("W1", "F1.1", (left, top) => [[left, top - 3]]);
    const moved = after(bench, movePart(bench, "F1", { x: 4, y: 40, page: "p2" }));
    expect(bends(moved, "W1")).toBeUndefined();
  });

  test("sets a part that stands nowhere on the page that is named", () => {
    const { M1: _, ...others } = SMALL.placement.parts;
    const bench = benchFor({ ...SMALL, placement: { ...SMALL.placement, parts: others } });
    expect(place(after(bench, movePart(bench, "M1", { x: 9, y: 9, page: "p2" })), "M1")).toEqual({
      page: "p2",
      x: 9,
      y: 9,
    });
  });
});

describe("turning a part", () => {
  test("four times, or there and back, brings it back for every part of sample 1", () => {
    const start = benchFor(VENTS);
    for (const { id } of VENTS.parts) {
      const inside: Bench = {
        ...start,
        circuit: {
          ...VENTS,
          placement: { wires: {}, parts: { [id]: { ...VENTS.placement.parts[id]!, page: "p2", x: 60, y: 50 } } },
        },
      };
      let bench = inside;
      for (let quarter = 0; quarter < 4; quarter++) bench = after(bench, turnPart(bench, id, "clockwise"));
      expect(place(bench, id), id).toEqual(place(inside, id));
      bench = after(bench, turnPart(bench, id, "clockwise"));
      expect(place(bench, id), id).not.toEqual(place(inside, id));
      expect(place(after(bench, turnPart(bench, id, "back")), id), id).toEqual(place(inside, id));
    }
  });

  test("or flipping it drops the bends of its wires", () => {
    const { bench } = bent("W1", "F1.1", (left, top) => [[left, top - 3]]);
    expect(bends(after(bench, turnPart(bench, "F1", "clockwise")), "W1")).toBeUndefined();
    const flipped = after(bench, flipPart(bench, "F1"));
    expect(bends(flipped, "W1")).toBeUndefined();
    expect(place(flipped, "F1")?.flip).toBe(true);
    expect(place(after(flipped, flipPart(flipped, "F1")), "F1")).toEqual(place(bench, "F1"));
  });
});
