import type { Circuit } from "../../core/circuit/circuit.ts";

/** A circuit with one of most things, small enough to break in a test: battery, fuse, plugged switch, joint, motor. */
export const SMALL: Circuit = {
  format: "wirefathom/circuit",
  version: 1,
  title: "Wiper",
  vehicle: "Test van (invented)",
  nominalVolts: 12,
  colourCodes: "iec60757",
  pages: [
    { id: "p1", title: "Wiper", widthMm: 297, heightMm: 210 },
    { id: "p2", title: "Grounds", widthMm: 297, heightMm: 210 },
  ],
  parts: [
    { id: "G1", kind: "battery", label: "Battery" },
    { id: "F1", kind: "fuse", settings: { amps: 10 } },
    {
      id: "S1",
      kind: "switch",
      label: "Wiper switch",
      terminals: ["1", "2", "3"],
      positions: [
        { name: "off", joins: [["2", "3"]] },
        { name: "on", joins: [["1", "2"]] },
        { name: "once", joins: [["1", "2"]], springsBackTo: "off" },
      ],
    },
    { id: "X2", kind: "connector", settings: { ways: 2 } },
    { id: "M1", kind: "motor", settings: { amps: 4, stall: 20 } },
    { id: "L1", kind: "page-link", settings: { name: "31" } },
    { id: "L2", kind: "page-link", settings: { name: "31" } },
    { id: "GP1", kind: "ground" },
    { id: "GP2", kind: "ground" },
  ],
  wires: [
    { id: "W1", from: "G1.+", to: "F1.1", colour: "RD", mm2: 2.5, metres: 0.5 },
    { id: "W2", from: "F1.2", to: "X1-1", colour: "RD/BK", mm2: 1.5, metres: 2 },
    { id: "W3", from: "X1-2", to: "X2-1a", colour: "GN", mm2: 1.5, metres: 2, ohms: null },
    { id: "W4", from: "X2-1b", to: "M1.1", colour: "GN", mm2: 1.5, metres: 0.3 },
    { id: "W5", from: "M1.2", to: "X2-2b", colour: "BN", mm2: 1.5, ohms: 0.004 },
    { id: "W6", from: "X2-2a", to: "L1.1", colour: "BN", mm2: 1.5, metres: 1 },
    { id: "W7", from: "L2.1", to: "GP2.stud", colour: "BN", mm2: 1.5, metres: 1 },
    { id: "W8", from: "G1.-", to: "GP1.stud", colour: "BK", mm2: 16, metres: 0.4 },
    { id: "W9", from: "X1-3", to: "X2-2a", colour: "BN/WH", mm2: 1.5, metres: 1 },
  ],
  placement: {
    parts: {
      G1: { page: "p1", x: 4, y: 40 },
      F1: { page: "p1", x: 4, y: 20 },
      S1: { page: "p1", x: 20, y: 20 },
      X2: { page: "p1", x: 40, y: 20 },
      M1: { page: "p1", x: 60, y: 20, turn: 90, flip: true },
      L1: { page: "p1", x: 80, y: 20 },
      GP1: { page: "p1", x: 4, y: 60 },
      L2: { page: "p2", x: 4, y: 4 },
      GP2: { page: "p2", x: 20, y: 20 },
    },
    wires: {
      W2: [
        [10, 20],
        [10, 10],
      ],
    },
  },
  connectors: [
    {
      id: "X1",
      rows: [
        ["1", "2", "3"],
        ["4", "", "6"],
      ],
      cavities: { "1": "S1.1", "2": "S1.2", "3": "S1.3" },
    },
    { id: "X2", rows: [["1", "2"]] },
  ],
  access: [
    {
      id: "dash",
      label: "Lower dash panel off",
      minutes: 4,
      hands: 1,
      after: [],
      cautions: ["Airbag near: leave it."],
    },
    { id: "column", label: "Column shroud off", minutes: 3, after: ["dash"] },
  ],
  reach: {
    S1: { access: "column" },
    "X1-1": { minutes: 1, hands: 2 },
    "X2-1": { cautions: ["Sharp edge."] },
    "M1.1": { doNotProbe: "sealed" },
  },
  checks: [{ id: "wiper-on", label: "Wiper runs", condition: { set: { S1: "on" } }, load: "M1", expect: "forward" }],
  scenes: [
    {
      label: "Plug apart",
      condition: { set: { S1: "on" }, apart: ["X1"], out: ["F1"], batteryOff: true, running: false, ambientC: 20 },
      caption: "Nothing runs.",
    },
  ],
  cautions: ["Hands clear of the wiper."],
};

/** A copy that may be changed at will, as plain JSON. */
// biome-ignore lint/suspicious/noExplicitAny: a broken file has no type
export function copy(circuit: Circuit = SMALL): any {
  return JSON.parse(JSON.stringify(circuit));
}
