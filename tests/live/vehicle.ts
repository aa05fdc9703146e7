import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Part } from "../../core/parts/kind.ts";

/** A small circuit for a test: parts, and wires written as "W1 G1.+ F1.1", 10 mohm each. Nothing is placed. */
export function vehicle(parts: readonly Part[], wires: readonly string[], more: Partial<Circuit> = {}): Circuit {
  return {
    format: "wirefathom/circuit",
    version: 1,
    title: "Test bench",
    nominalVolts: 12,
    colourCodes: "free",
    pages: [],
    parts,
    wires: wires.map((text) => {
      const [id = "", from = "", to = ""] = text.split(" ");
      return { id, from, to, ohms: 0.01 };
    }),
    placement: { parts: {}, wires: {} },
    connectors: [],
    access: [],
    reach: {},
    checks: [],
    scenes: [],
    ...more,
  };
}

export const G1: Part = { id: "G1", kind: "battery" };

/** A latching make contact between terminals 1 and 2. */
export function makeSwitch(id: string): Part {
  return {
    id,
    kind: "switch",
    terminals: ["1", "2"],
    positions: [
      { name: "off", joins: [] },
      { name: "on", joins: [["1", "2"]] },
    ],
  };
}

/** Battery, fuse, switch and motor in a row, body between motor and battery. */
export const ROW = vehicle(
  [
    G1,
    { id: "F1", kind: "fuse", settings: { amps: 10 } },
    makeSwitch("S1"),
    { id: "M1", kind: "motor" },
    { id: "GP1", kind: "ground" },
    { id: "GP2", kind: "ground" },
  ],
  ["W1 G1.+ F1.1", "W2 F1.2 S1.1", "W3 S1.2 M1.1", "W4 M1.2 GP1.stud", "W5 GP2.stud G1.-"],
  {
    checks: [{ id: "runs", label: "The motor runs", condition: { set: { S1: "on" } }, load: "M1", expect: "forward" }],
  },
);
