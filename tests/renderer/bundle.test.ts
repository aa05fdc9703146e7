import { describe, expect, test } from "vitest";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { benchFor } from "../../core/edit/bench.ts";
import { drawWires } from "../../core/edit/commands/drawWires.ts";
import { gatheredWith, ledTo, pairsTo, terminalsBeside, terminalsIn } from "../../renderer/canvas/bundle.ts";
import { standingOn } from "../../renderer/canvas/standing.ts";
import { connectorsWith, netThings, wiresOnConnector } from "../../renderer/state/groups.ts";
import { after, SMALL, VENTS } from "../edit/given.ts";

/** Two joints of four ways above each other, and a ground. */
const JOINTS: Circuit = {
  ...SMALL,
  parts: [
    { id: "X1", kind: "connector", settings: { ways: 4 } },
    { id: "X2", kind: "connector", settings: { ways: 4 } },
    { id: "GP1", kind: "ground" },
  ],
  wires: [],
  connectors: [],
  reach: {},
  checks: [],
  scenes: [],
  placement: {
    parts: {
      X1: { page: "p1", x: 10, y: 10 },
      X2: { page: "p1", x: 10, y: 40 },
      GP1: { page: "p1", x: 60, y: 60 },
    },
    wires: {},
  },
};
const lying = { circuit: JOINTS, standing: standingOn(JOINTS, "p1", "iec") };
const spot = (point: string) => lying.standing.points.get(point)!;
const below = (part: string) => lying.standing.parts.get(part)!.box;
const halves = (joint: string, half: string) => ["1", "2", "3", "4"].map((way) => `${joint}-${way}${half}`);

describe("several wires at once", () => {
  test("terminals are gathered by a box, or on the near side of a part, in the order in which they lie", () => {
    const box = below("X1");
    expect(terminalsBeside(lying, "X1", spot("X1-3b"))).toEqual(halves("X1", "b"));
    expect(terminalsBeside(lying, "X1", spot("X1-2a"))).toEqual(halves("X1", "a"));
    const all = terminalsIn(lying, { x: box.left - 2, y: box.top - 2 }, { x: box.right + 2, y: box.bottom + 2 });
    expect([...all].sort()).toEqual([...halves("X1", "a"), ...halves("X1", "b")].sort());
    expect(terminalsIn(lying, { x: 55, y: 55 }, { x: 80, y: 80 })).toEqual(["GP1.stud"]);
  });

  test("one more is gathered by a second press, and let go by a third", () => {
    expect(gatheredWith(["X1-1b"], "X1-2b")).toEqual(["X1-1b", "X1-2b"]);
    expect(gatheredWith(["X1-1b", "X1-2b"], "X1-1b")).toEqual(["X1-2b"]);
  });

  test("the first goes to the terminal that is met, the others to those that follow it", () => {
    expect(ledTo(lying, halves("X1", "b"), "X2-1a")).toEqual(
      halves("X1", "b").map((from, index) => ({ from, to: halves("X2", "a")[index] })),
    );
    expect(ledTo(lying, halves("X1", "b"), "X2-3a").map(({ to }) => to)).toEqual(["X2-3a", "X2-4a"]);
    expect(ledTo(lying, halves("X1", "b"), "X1-2b")).toEqual([]);
  });

  test("all go to a ground, and what is drawn is one edit", () => {
    const pairs = ledTo(lying, halves("X1", "b"), "GP1.stud");
    expect(pairs.map(({ to }) => to)).toEqual(["GP1.stud", "GP1.stud", "GP1.stud", "GP1.stud"]);
    const bench = benchFor(JOINTS);
    expect(after(bench, drawWires(bench, pairs)).circuit.wires).toHaveLength(4);
  });

  test("a wire that is there already is not drawn again", () => {
    const bench = benchFor(JOINTS);
    const { circuit } = after(bench, drawWires(bench, [{ from: "X1-2b", to: "X2-2a" }]));
    expect(pairsTo(circuit, halves("X1", "b"), halves("X2", "a")).map(({ from }) => from)).toEqual([
      "X1-1b",
      "X1-3b",
      "X1-4b",
    ]);
  });
});

describe("what belongs together", () => {
  test("a net is chosen with its splices, from a wire and from a point", () => {
    const net = netThings(VENTS, { is: "wire", id: "W13" });
    expect(net).toContainEqual({ is: "part", id: "SP1" });
    expect(net.filter(({ is }) => is === "wire").length).toBeGreaterThan(3);
    expect(netThings(VENTS, { is: "point", id: "X5-6" })).toEqual(net);
    expect(netThings(VENTS, { is: "part", id: "S5" })).toEqual([]);
  });

  test("all wires on a connector are those that end on it, from a part, a pin or a wire of it", () => {
    const wires = wiresOnConnector(VENTS, "X5");
    expect(wires).toHaveLength(5);
    expect(connectorsWith(VENTS, { is: "part", id: "S5" })).toEqual(["X5"]);
    expect(connectorsWith(VENTS, { is: "point", id: "X5-6" })).toEqual(["X5"]);
    expect(connectorsWith(VENTS, { is: "point", id: "X30-1a" })).toEqual(["X30"]);
    expect(connectorsWith(VENTS, { is: "wire", id: "W13" })).toEqual(["X5"]);
  });
});
