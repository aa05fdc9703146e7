import { describe, expect, test } from "vitest";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { netOf } from "../../core/circuit/nets.ts";
import { terminalSpots } from "../../core/circuit/placeSymbol.ts";
import { type Bench, benchFor } from "../../core/edit/bench.ts";
import { bendWire } from "../../core/edit/commands/bendWire.ts";
import { drawWire } from "../../core/edit/commands/drawWire.ts";
import { drawWires } from "../../core/edit/commands/drawWires.ts";
import { drawWireToWire } from "../../core/edit/commands/drawWireToWire.ts";
import { reattachWire } from "../../core/edit/commands/reattachWire.ts";
import { pathOf } from "../../core/edit/wirePath.ts";
import { after, VENTS } from "./given.ts";

const vents = benchFor(VENTS);
const wire = ({ circuit }: Bench, id: string) => circuit.wires.find((each) => each.id === id)!;
const part = ({ circuit }: Bench, id: string) => circuit.parts.find((each) => each.id === id)!;
const metresOf = (bench: Bench, ids: readonly string[]) =>
  ids.reduce((sum, id) => sum + (wire(bench, id).metres ?? 0), 0);

describe("drawing a wire", () => {
  test("takes the next free id, ends on the cavities, and writes the colour as the set does", () => {
    const bench = after(vents, drawWire(vents, "S3.6", "S4.6", { colour: "bu-wh", mm2: 1.5, metres: 2 }));
    expect(bench.circuit.wires.at(-1)).toEqual({
      id: "W68",
      from: "X3-6",
      to: "X4-6",
      colour: "BU/WH",
      mm2: 1.5,
      metres: 2,
    });
  });

  test("sets bends on whole grid units, none twice in a row", () => {
    const bends = [
      [70.4, 62],
      [70, 61.6],
      [86, 62],
    ] as const;
    const bench = after(vents, drawWire(vents, "S3.6", "S4.6", { bends }));
    expect(bench.circuit.placement.wires.W68).toEqual([
      [70, 62],
      [86, 62],
    ]);
  });

  test("several at once are one edit and have ids in a row", () => {
    const bench = after(
      vents,
      drawWires(vents, [
        { from: "F1.2", to: "F2.1" },
        { from: "S3.6", to: "S4.6" },
      ]),
    );
    expect(bench.circuit.wires.slice(-2).map(({ id, from, to }) => [id, from, to])).toEqual([
      ["W68", "F1.2", "F2.1"],
      ["W69", "X3-6", "X4-6"],
    ]);
  });
});

describe("joining a wire to a wire", () => {
  test("cuts it in two that keep colour and size and share its length and bends", () => {
    const bench = after(vents, drawWireToWire(vents, "F2.1", "W2", { x: 54.4, y: 24 }, { colour: "RD" }));
    const whole = wire(vents, "W2");
    const [first, second, branch] = [wire(bench, "W2"), wire(bench, "W68"), wire(bench, "W69")];
    for (const half of [first, second]) expect([half.colour, half.mm2]).toEqual([whole.colour, whole.mm2]);
    expect(metresOf(bench, ["W2", "W68"])).toBeCloseTo(whole.metres!, 12);
    // 58 of the 76 grid units of its way lie behind the cut.
    expect(first.metres).toBeCloseTo((whole.metres! * 58) / 76, 3);
    expect([first.from, second.to, branch.from]).toEqual([whole.from, whole.to, "F2.1"]);
    expect(bench.circuit.placement.wires.W2).toEqual([
      [14, 10],
      [54, 10],
    ]);
    expect(bench.circuit.placement.wires.W68).toBeUndefined();
    const splice = part(bench, "SP4");
    expect(splice).toEqual({ id: "SP4", kind: "splice" });
    const legs = [first.to, second.from, branch.to];
    expect(new Set(legs)).toEqual(new Set(["SP4.1", "SP4.2", "SP4.3"]));
    const spots = terminalSpots(bench.circuit, "p1");
    expect(legs.map((leg) => spots.get(leg)!.side)).toEqual(["up", "down", "left"]);
    expect(pathOf(bench.circuit, first)!.corners.at(-1)).toEqual({ x: 54, y: 22 });
  });

  test("shares ohms that were given outright, and leaves amounts unsaid that were not known", () => {
    const circuit: Circuit = {
      ...VENTS,
      wires: VENTS.wires.map((each) => (each.id === "W5" ? { ...each, ohms: 0.5, metres: 0.001 } : each)),
    };
    const bench = after(benchFor(circuit), drawWireToWire(benchFor(circuit), "F2.1", "W5", { x: 46, y: 46 }));
    expect(wire(bench, "W5").ohms! + wire(bench, "W68").ohms!).toBeCloseTo(0.5, 12);
    expect(metresOf(bench, ["W5", "W68"])).toBeCloseTo(0.001, 12);
    const bare: Circuit = { ...VENTS, wires: VENTS.wires.map(({ id, from, to }) => ({ id, from, to })) };
    const unsaid = after(benchFor(bare), drawWireToWire(benchFor(bare), "F2.1", "W5", { x: 46, y: 46 }));
    for (const id of ["W5", "W68", "W69"]) expect(Object.keys(wire(unsaid, id))).toEqual(["id", "from", "to"]);
  });

  test("keeps the splice off the ends of the wire", () => {
    const bench = after(vents, drawWireToWire(vents, "F2.1", "W5", { x: 34, y: 46 }));
    expect(pathOf(bench.circuit, wire(bench, "W5"))!.length).toBe(2);
    expect(bench.circuit.placement.parts.SP4).toMatchObject({ page: "p2", x: 36, y: 44 });
  });

  test("keeps the splice clear of corners, parts and other wires", () => {
    const bench = after(vents, drawWireToWire(vents, "F5.2", "W3", { x: 54, y: 55 }));
    expect(bench.circuit.placement.parts.SP4).toMatchObject({ page: "p1", x: 55, y: 53 });
    for (const id of ["W3", "W68", "W69"]) expect(pathOf(bench.circuit, wire(bench, id)), id).not.toBeNull();
  });

  test("goes to the end that wires on one line have in common", () => {
    const bench = after(vents, drawWireToWire(vents, "F2.1", "W2", { x: 34, y: 10 }, { colour: "RD" }));
    expect(bench.circuit.parts).toBe(VENTS.parts);
    expect(bench.circuit.wires.slice(VENTS.wires.length)).toEqual([
      { id: "W68", from: "F2.1", to: "F1.2", colour: "RD" },
    ]);
  });

  test("takes a further leg of a splice at its end; the last leg stays where it is", () => {
    const bench = after(vents, drawWireToWire(vents, "M4.1", "W13", { x: 103, y: 56 }));
    expect(bench.circuit.parts).toHaveLength(VENTS.parts.length);
    expect(part(bench, "SP1").terminals).toEqual(["1", "2", "3", "4", "6", "5"]);
    expect(bench.circuit.wires.at(-1)).toEqual({ id: "W68", from: "M4.1", to: "SP1.6" });
    const [before, now] = [terminalSpots(VENTS, "p2"), terminalSpots(bench.circuit, "p2")];
    for (const leg of ["1", "2", "3", "4", "5"]) expect(now.get(`SP1.${leg}`)).toEqual(before.get(`SP1.${leg}`));
  });

  test("takes a leg that is free before it makes one", () => {
    const circuit: Circuit = { ...VENTS, wires: VENTS.wires.filter(({ id }) => id !== "W33") };
    const bench = after(benchFor(circuit), drawWireToWire(benchFor(circuit), "M4.1", "W13", { x: 103, y: 56 }));
    expect(part(bench, "SP1").terminals).toBeUndefined();
    expect(bench.circuit.wires.at(-1)!.to).toBe("SP1.2");
  });

  test("makes one net of all the ends, wherever it is met", () => {
    for (const { id } of VENTS.wires) {
      const path = pathOf(VENTS, wire(vents, id));
      if (!path) continue;
      for (const share of [0.1, 0.5, 0.9]) {
        const index = Math.min(Math.floor(share * path.corners.length), path.corners.length - 1);
        const edit = drawWireToWire(vents, "F2.1", id, path.corners[index]!);
        if (!edit.ok) continue;
        const { circuit } = after(vents, edit);
        const { from, to } = wire(vents, id);
        expect(netOf(circuit, from)!.points, id).toEqual(expect.arrayContaining([to, "F2.1"]));
        const halves = circuit.wires.filter((each) => each.id === id || VENTS.wires.every((old) => old.id !== each.id));
        expect(halves.reduce((sum, { metres = 0 }) => sum + metres, 0)).toBeCloseTo(wire(vents, id).metres!, 9);
      }
    }
  });
});

describe("bends and ends", () => {
  test("no bends leave a wire to the program", () => {
    const bench = after(vents, bendWire(vents, "W5", []));
    expect(Object.hasOwn(bench.circuit.placement.wires, "W5")).toBe(false);
  });

  test("an end put elsewhere ends on the cavity and drops the bends", () => {
    const bench = after(vents, reattachWire(vents, "W5", "to", "S5.6"));
    expect(wire(bench, "W5").to).toBe("X5-6");
    expect(bench.circuit.placement.wires.W5).toBeUndefined();
  });
});
