import type { Volts } from "../base/units.ts";
import type { Connector, Wire } from "../circuit/circuit.ts";
import type { Part, Position } from "../parts/kind.ts";
import type { Fragment, FragmentPlace } from "./fragment.ts";

/** Ids of the ready assemblies; their titles stand in `core/base/words/edit.ts`. */
export const ASSEMBLY_IDS = ["relay-with-fuse", "reversing-switch", "lamp-pair", "connector-pair"] as const;
/** Id of a ready assembly. */
export type AssemblyId = (typeof ASSEMBLY_IDS)[number];

/** A part and where its top left stands, in grid units from the top left of the assembly. */
interface Placed extends FragmentPlace {
  readonly part: Part;
}

interface Drawn {
  readonly parts: readonly Placed[];
  readonly wires: readonly Wire[];
  readonly connectors?: readonly Connector[];
}

/** One pair that rests on the ground at 1 and 2, and of which either side goes to the feed at 6 while it is held. */
const REVERSING: readonly Position[] = [
  {
    name: "rest",
    joins: [
      ["4", "1"],
      ["5", "2"],
    ],
  },
  {
    name: "forward",
    springsBackTo: "rest",
    joins: [
      ["4", "6"],
      ["5", "2"],
    ],
  },
  {
    name: "reverse",
    springsBackTo: "rest",
    joins: [
      ["4", "1"],
      ["5", "6"],
    ],
  },
];

/** Colours are codes of IEC 60757; sizes are common practice for loads of the kinds' usual values. */
const DRAWN: Readonly<Record<AssemblyId, Drawn>> = {
  "relay-with-fuse": {
    parts: [
      { part: { id: "F1", kind: "fuse", settings: { amps: 15 } }, x: 5, y: 0 },
      { part: { id: "K1", kind: "relay" }, x: 0, y: 12, turn: 180 },
      { part: { id: "GP1", kind: "ground" }, x: 1, y: 26 },
    ],
    wires: [wire("W1", "F1.2", "K1.30", "RD", 2.5), wire("W2", "K1.85", "GP1.stud", "BN", 1)],
  },
  "reversing-switch": {
    parts: [
      {
        part: { id: "S1", kind: "switch", terminals: ["1", "2", "4", "5", "6"], positions: REVERSING },
        x: 8,
        y: 0,
      },
      { part: { id: "M1", kind: "motor" }, x: 11, y: 18, turn: 270 },
      { part: { id: "GP1", kind: "ground" }, x: 0, y: 2 },
    ],
    wires: [
      wire("W1", "S1.1", "GP1.stud", "BN", 1.5),
      wire("W2", "S1.2", "GP1.stud", "BN", 1.5),
      wire("W3", "S1.4", "M1.1", "GN", 1.5),
      wire("W4", "S1.5", "M1.2", "YE", 1.5),
    ],
  },
  "lamp-pair": {
    parts: [
      { part: { id: "E1", kind: "lamp" }, x: 0, y: 0 },
      { part: { id: "E2", kind: "lamp" }, x: 8, y: 0 },
      { part: { id: "SP1", kind: "splice" }, x: 4, y: 11 },
      { part: { id: "GP1", kind: "ground" }, x: 4, y: 22 },
    ],
    wires: [
      wire("W1", "E1.2", "SP1.3", "BN", 1),
      wire("W2", "E2.2", "SP1.1", "BN", 1),
      wire("W3", "SP1.2", "GP1.stud", "BN", 1.5),
    ],
  },
  "connector-pair": {
    parts: [
      { part: { id: "X1", kind: "connector" }, x: 0, y: 0 },
      { part: { id: "X2", kind: "connector" }, x: 0, y: 14 },
    ],
    wires: [wire("W1", "X1-1b", "X2-1a", "GN", 1.5), wire("W2", "X1-2b", "X2-2a", "YE", 1.5)],
    connectors: [
      { id: "X1", rows: [["1", "2"]] },
      { id: "X2", rows: [["1", "2"]] },
    ],
  },
};

/** A ready assembly as a fragment to paste, its parts with the usual values of a vehicle of these volts. */
export function assembly(id: AssemblyId, nominalVolts: Volts): Fragment {
  const { parts, wires, connectors = [] } = DRAWN[id];
  return {
    format: "wirefathom/fragment",
    version: 1,
    nominalVolts,
    colourCodes: "iec60757",
    parts: parts.map(({ part }) => part),
    wires,
    connectors,
    places: Object.fromEntries(parts.map(({ part, ...place }) => [part.id, place])),
    bends: {},
  };
}

function wire(id: string, from: string, to: string, colour: string, mm2: number): Wire {
  return { id, from, to, colour, mm2 };
}
