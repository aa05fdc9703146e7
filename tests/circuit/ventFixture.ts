import type { Circuit } from "../../core/circuit/circuit.ts";

const own = [
  {
    name: "rest",
    joins: [
      ["4", "1"],
      ["5", "2"],
    ],
  },
  {
    name: "open",
    joins: [
      ["4", "6"],
      ["5", "2"],
    ],
    springsBackTo: "rest",
  },
  {
    name: "close",
    joins: [
      ["4", "1"],
      ["5", "6"],
    ],
    springsBackTo: "rest",
  },
] as const;

/** One roof vent with its relay, own switch and motor, on one A3 page; and a lamp on a second page. */
export const VENT: Circuit = {
  format: "wirefathom/circuit",
  version: 1,
  title: "One roof vent",
  vehicle: "Marram 600 camper (invented)",
  revision: 3,
  nominalVolts: 12,
  colourCodes: "iec60757",
  pages: [
    { id: "p1", title: "Vent", widthMm: 420, heightMm: 297 },
    { id: "p2", title: "Lamp", widthMm: 297, heightMm: 210 },
  ],
  parts: [
    { id: "G1", kind: "battery", label: "Leisure battery" },
    { id: "GP1", kind: "ground", label: "Battery ground, rear locker" },
    { id: "F1", kind: "fuse", label: "Main fuse", settings: { amps: 60, family: "bolt" } },
    {
      id: "S1",
      kind: "ignition-switch",
      label: "Key",
      positions: [
        { name: "off", joins: [] },
        { name: "on", joins: [["1", "2"]] },
      ],
    },
    { id: "F2", kind: "fuse", label: "Coil", settings: { amps: 10 } },
    { id: "K1", kind: "relay", label: "Vent relay" },
    { id: "F4", kind: "fuse", label: "Own switches", settings: { amps: 25 } },
    { id: "SP1", kind: "splice", settings: { legs: 3 } },
    { id: "S5", kind: "switch", label: "Middle vent switch", positions: own },
    { id: "X32", kind: "connector", label: "Roof joint", settings: {} },
    { id: "M3", kind: "motor", label: "Middle vent" },
    { id: "GP2", kind: "ground", label: "rear sill" },
    { id: "E1", kind: "lamp", label: "Reading lamp", settings: { watts: 10 } },
    { id: "GP3", kind: "ground" },
  ],
  wires: [
    { id: "W1", from: "G1.+", to: "F1.1", colour: "RD", mm2: 16, metres: 0.4 },
    { id: "W2", from: "F1.2", to: "K1.30", colour: "RD", mm2: 10, metres: 3 },
    { id: "W3", from: "F1.2", to: "S1.1", colour: "RD/BK", mm2: 1.5, metres: 3 },
    { id: "W4", from: "S1.2", to: "F2.1", colour: "BK", mm2: 1, metres: 1 },
    { id: "W5", from: "F2.2", to: "K1.86", colour: "BK/WH", mm2: 1, metres: 1 },
    { id: "W6", from: "K1.85", to: "GP1.stud", colour: "BN", mm2: 1, metres: 2 },
    { id: "W7", from: "K1.87", to: "F4.1", colour: "OG", mm2: 6, metres: 0.3 },
    { id: "W8", from: "F4.2", to: "SP1.3", colour: "OG", mm2: 2.5, metres: 4 },
    { id: "W9", from: "SP1.1", to: "X5-6", colour: "OG/BK", mm2: 2.5, metres: 3.2 },
    { id: "W10", from: "X5-4", to: "X32-1a", colour: "GN/BK", mm2: 1.5, metres: 2 },
    { id: "W11", from: "X5-5", to: "X32-2a", colour: "YE/BK", mm2: 1.5, metres: 2 },
    { id: "W12", from: "X32-1b", to: "M3.1", colour: "GN/BK", mm2: 1.5, metres: 0.5 },
    { id: "W13", from: "X32-2b", to: "M3.2", colour: "YE/BK", mm2: 1.5, metres: 0.5 },
    { id: "W14", from: "X5-1", to: "GP2.stud", colour: "BN", mm2: 1.5, metres: 2 },
    { id: "W15", from: "X5-2", to: "GP2.stud", colour: "BN", mm2: 1.5, metres: 2 },
    { id: "W16", from: "G1.-", to: "GP1.stud", colour: "BK", mm2: 16, metres: 0.4 },
    { id: "W17", from: "SP1.2", to: "E1.1", colour: "GY/RD", mm2: 0.75, metres: 6 },
    { id: "W18", from: "E1.2", to: "GP3.stud", colour: "BN", mm2: 0.75, metres: 1 },
  ],
  placement: {
    parts: {
      G1: { page: "p1", x: 14, y: 74 },
      GP1: { page: "p1", x: 14, y: 92 },
      F1: { page: "p1", x: 14, y: 58 },
      K1: { page: "p1", x: 12, y: 22 },
      S1: { page: "p1", x: 34, y: 46, turn: 180 },
      F2: { page: "p1", x: 34, y: 34, turn: 180 },
      F4: { page: "p1", x: 40, y: 14, turn: 270 },
      SP1: { page: "p1", x: 92, y: 24 },
      S5: { page: "p1", x: 88, y: 44 },
      X32: { page: "p1", x: 90, y: 68 },
      M3: { page: "p1", x: 92, y: 80 },
      GP2: { page: "p1", x: 120, y: 92 },
      E1: { page: "p2", x: 40, y: 20 },
      GP3: { page: "p2", x: 40, y: 40 },
    },
    wires: {},
  },
  connectors: [
    {
      id: "X5",
      rows: [
        ["1", "2", "3"],
        ["4", "5", "6"],
      ],
      cavities: { "1": "S5.1", "2": "S5.2", "4": "S5.4", "5": "S5.5", "6": "S5.6" },
    },
    { id: "X32", rows: [["1", "2"]] },
  ],
  access: [],
  reach: {},
  checks: [],
  scenes: [],
};
