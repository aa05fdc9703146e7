import type { Circuit } from "../../core/circuit/circuit.ts";
import type { PositionCell, PositionTable } from "../../core/diagnose/positionTable.ts";
import type { Expected, OutcomeOf, ProbeOrder, Setting, Step, Suspect } from "../../core/diagnose/step.ts";

/** The middle roof vent of an invented camper: its own switch S5, the joint X32 and the motor M3. */
export const VENT_CIRCUIT: Circuit = {
  format: "wirefathom/circuit",
  version: 1,
  title: "Roof vents",
  vehicle: "Marram 600 camper, 2016 (invented)",
  revision: 14,
  nominalVolts: 12,
  colourCodes: "iec60757",
  pages: [{ id: "p2", title: "Roof vents", widthMm: 420, heightMm: 297 }],
  parts: [
    { id: "G1", kind: "battery", label: "House battery" },
    { id: "F1", kind: "fuse", label: "Main fuse", settings: { amps: 60 } },
    { id: "F3", kind: "fuse", settings: { amps: 15 } },
    { id: "F4", kind: "fuse", settings: { amps: 25 } },
    { id: "S1", kind: "ignition-switch", label: "Key switch" },
    { id: "K1", kind: "relay" },
    {
      id: "S2",
      kind: "switch",
      label: "Master panel",
      terminals: ["7", "1", "2", "9"],
      controls: [
        {
          name: "middle",
          positions: [
            {
              name: "rest",
              joins: [
                ["1", "9"],
                ["2", "9"],
              ],
            },
            {
              name: "open",
              springsBackTo: "rest",
              joins: [
                ["1", "7"],
                ["2", "9"],
              ],
            },
            {
              name: "close",
              springsBackTo: "rest",
              joins: [
                ["2", "7"],
                ["1", "9"],
              ],
            },
          ],
        },
        {
          name: "lock-out",
          positions: [
            { name: "off", joins: [] },
            { name: "on", joins: [] },
          ],
        },
      ],
    },
    {
      id: "S5",
      kind: "switch",
      label: "Middle vent switch",
      terminals: ["1", "2", "4", "5", "6"],
      positions: [
        {
          name: "rest",
          joins: [
            ["4", "1"],
            ["5", "2"],
          ],
        },
        {
          name: "open",
          springsBackTo: "rest",
          joins: [
            ["4", "6"],
            ["5", "2"],
          ],
        },
        {
          name: "close",
          springsBackTo: "rest",
          joins: [
            ["5", "6"],
            ["4", "1"],
          ],
        },
      ],
    },
    { id: "M3", kind: "motor", label: "Middle vent motor", settings: { amps: 3, stall: 8 } },
    { id: "X32", kind: "connector", label: "Roof joint", terminals: ["1a", "1b", "2a", "2b"] },
    { id: "SP1", kind: "splice" },
    { id: "GP2", kind: "ground" },
  ],
  wires: [
    { id: "W13", from: "SP1.3", to: "X5-6", colour: "OG/BK", mm2: 2.5 },
    { id: "W11", from: "S2.1", to: "X5-1", colour: "BN/WH", mm2: 2.5 },
    { id: "W12", from: "S2.2", to: "X5-2", colour: "GY", mm2: 2.5 },
    { id: "W14", from: "X5-4", to: "X32-1a", colour: "GN", mm2: 2.5 },
    { id: "W15", from: "X5-5", to: "X32-2a", colour: "YE/BK", mm2: 2.5 },
    { id: "W16", from: "X32-1b", to: "M3.1", colour: "GN", mm2: 1.5 },
    { id: "W17", from: "X32-2b", to: "M3.2", colour: "YE/BK", mm2: 1.5 },
    { id: "W5", from: "S2.7", to: "F3.2", colour: "RD" },
    { id: "W6", from: "F4.2", to: "SP1.1", colour: "OG", mm2: 2.5 },
  ],
  placement: { parts: {}, wires: {} },
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
  access: [
    { id: "vent-switch", label: "Lift S5 out of the trim; leave X5 on", minutes: 2 },
    { id: "roof-joint", label: "Empty the locker over the table; 4 screws; fold the panel down", minutes: 6 },
    { id: "vent-frame", label: "Fly screen out; 8 screws; lower the inner frame", minutes: 8, after: ["roof-joint"] },
  ],
  reach: { X5: { access: "vent-switch" }, X32: { access: "roof-joint" }, M3: { access: "vent-frame" } },
  checks: [
    {
      id: "middle-open",
      label: "Middle roof vent opens",
      condition: { set: { S1: "on", S5: "open" } },
      load: "M3",
      expect: "forward",
    },
    {
      id: "master-open",
      label: "Middle roof vent opens from the panel",
      condition: { set: { S1: "on", "S2.middle": "open" } },
      load: "M3",
      expect: "forward",
    },
  ],
  scenes: [],
  cautions: [
    "Unplug 230 V first; mains wiring: licensed people only.",
    "Hands and tools out of the vent frame: switch or lamp may move it.",
  ],
};

export const COMPLAINT = "Middle roof vent does nothing, at either switch";

/** A suspect of this target, of any likelihood. */
export function suspect(target: string, mode: string, probability = 0.05): Suspect {
  return {
    id: `${target}:${mode}`,
    faults: [{ target, mode }],
    title: `${target} ${mode}`,
    repairGroup: `${target}|replace`,
    notes: [],
    probability,
  };
}

/** What a good circuit shows. */
export function volts(low: number, high: number, lamp: Expected["lamp"] = null): Expected {
  return { low, high, unit: "V", lamp, word: null };
}

const KEY_ON = { set: { S1: "on" } };
const OPEN = { set: { S1: "on", S5: "open" } };
const CLOSE = { set: { S1: "on", S5: "close" } };

const PATTERNS: readonly OutcomeOf[] = [
  {
    word: "sags alike on both pins",
    limit: "",
    probability: 0.4,
    leaves: [suspect("M3", "seized"), suspect("M3", "jammed")],
    windows: [],
  },
  {
    word: "battery volts, other pin 0.00",
    limit: "",
    probability: 0.3,
    leaves: [suspect("W14", "open"), suspect("X32-1", "backed-out")],
    windows: [],
  },
  {
    word: "does not change",
    limit: "",
    probability: 0.2,
    leaves: [suspect("W13", "open"), suspect("SP1", "open")],
    windows: [],
  },
];

/** A plain step at a point, to change as a test needs. */
export function step(number: number, point: string, changes: Partial<Step> = {}): Step {
  const dash = point.lastIndexOf("-");
  return {
    number,
    point,
    black: "battery -",
    connector: dash > 0 ? point.slice(0, dash) : null,
    cavity: dash > 0 ? point.slice(dash + 1) : null,
    colour: "GN",
    instrument: "meter volts",
    lampTo: null,
    sweepOf: null,
    settings: [{ condition: KEY_ON, position: "", expect: volts(12, 12.3) }],
    access: "vent-switch",
    minutes: 0.6,
    hands: 1,
    why: "",
    cautions: [],
    outcomes: [],
    ohms: null,
    ...changes,
  };
}

function sweep(number: number, point: string, colour: string, expects: readonly Expected[], why: string): Step {
  const positions = ["rest", "open", "close"];
  const conditions = [KEY_ON, OPEN, CLOSE];
  const settings: readonly Setting[] = positions.map((position, i) => ({
    condition: conditions[i]!,
    position,
    expect: expects[i]!,
  }));
  return step(number, point, { colour, sweepOf: "S5", settings, why, outcomes: PATTERNS });
}

/** A row with the 4 A lamp hung from its point. */
export function lampStep(
  number: number,
  point: string,
  colour: string,
  lampTo: "battery +" | "battery -",
  expect: Expected,
  changes: Partial<Step> = {},
): Step {
  const settings = [{ condition: KEY_ON, position: "", expect }];
  return step(number, point, { colour, instrument: "4 A lamp", lampTo, settings, ...changes });
}

const HELD = { hands: 2, access: "roof-joint" } as const;
const LAMP_CAUTION = "The lamp loads the wire, may move what hangs on it, and gets hot.";

/** The order of the pictured checklist, as far as a probe order can say it. */
export const VENT_ORDER: ProbeOrder = {
  complaint: "Middle roof vent opens",
  suspects: [suspect("M3", "seized", 0.3), suspect("W14", "open", 0.1), suspect("X32-1", "corroded", 0.1)],
  cleared: ["G1", "F1", "S1", "K1", "F3", "F4", "W6", "SP1", "S2", "GP2"].map((id) => suspect(id, "open", 0.001)),
  steps: [
    sweep(
      1,
      "X5-4",
      "GN",
      [volts(0, 0), volts(12, 12.3), volts(0.2, 0.5)],
      "OPEN feeds pin 4; CLOSE makes it the way back.",
    ),
    sweep(
      2,
      "X5-5",
      "YE/BK",
      [volts(0, 0), volts(0.2, 0.5), volts(12, 12.3)],
      "Way back above 0: current flows, so harness and winding are closed.",
    ),
    lampStep(3, "X5-6", "OG/BK", "battery -", volts(11.9, 12.3, "bright"), {
      why: "Lamp and meter together: a poor feed shows only under load.",
      cautions: [LAMP_CAUTION],
    }),
    lampStep(4, "X5-1", "BN/WH", "battery +", volts(0.3, 0.7, "bright"), {
      why: "Dim or dark: no ground here. A meter alone reads 0.0 on a loose wire too.",
      cautions: [LAMP_CAUTION],
    }),
    lampStep(5, "X5-2", "GY", "battery +", volts(0.3, 0.7, "bright"), {
      why: "Same as row 4 on the other wire.",
      cautions: [LAMP_CAUTION],
    }),
    lampStep(6, "X32-1b", "GN", "battery -", volts(11, 12, "bright"), {
      ...HELD,
      settings: [{ condition: OPEN, position: "", expect: volts(11, 12, "bright") }],
      why: "Right: feed is good through the joint.",
    }),
    lampStep(7, "X32-1a", "GN", "battery -", volts(11, 12, "bright"), {
      ...HELD,
      settings: [{ condition: OPEN, position: "", expect: volts(11, 12, "bright") }],
      why: "Needed only if row 6 is low.",
    }),
    lampStep(8, "X32-2b", "YE/BK", "battery +", volts(0.4, 0.8, "bright"), {
      access: "roof-joint",
      why: "Right: the way back is good through the joint.",
    }),
    lampStep(9, "X32-2a", "YE/BK", "battery +", volts(0.4, 0.8, "bright"), {
      access: "roof-joint",
      why: "Needed only if row 8 is high.",
    }),
    step(10, "X32-1b", {
      black: "X32-2b",
      access: "roof-joint",
      settings: [{ condition: { apart: ["X32"] }, position: "", expect: volts(0, 0.1) }],
      why: "Other: a short to feed behind the joint.",
    }),
    lampStep(11, "M3.1", "GN", "battery -", volts(10.8, 11.6, "bright"), {
      black: "M3.2",
      access: "vent-frame",
      hands: 2,
      settings: [{ condition: OPEN, position: "", expect: volts(10.8, 11.6, "bright") }],
      why: "Bright: motor or gear. Free the gear, feed M3 by a fused jumper: turns = gear, still = motor.",
    }),
  ],
  minutes: 24,
  clearedBy: [],
  before: [],
  elsewhere: 0.02,
  progress: "open",
  expectedMinutes: 12,
  detours: [],
  clashes: [],
  jointly: [],
  beforehand: [],
};

/** A cell of the position table by its state's first letter: g0.06 grounded, p12.1 powered, f floating. */
export function tableCell(short: string): PositionCell {
  if (short === "f") return { state: "floating", volts: null, lampToMinus: "dark", lampToPlus: "dark" };
  const isFed = short.startsWith("p");
  return {
    state: isFed ? "powered" : "grounded",
    volts: Number(short.slice(1)),
    lampToMinus: isFed ? "bright" : "dark",
    lampToPlus: isFed ? "dark" : "bright",
  };
}

const COLUMNS = [
  ["Key OFF", "all at rest", true],
  ["At rest", "key on", true],
  ["S5 open", "held", true],
  ["S5 close", "held", true],
  ["S2 OPEN", "held", true],
  ["S2 CLOSE", "held", true],
  ["Key OFF", "all at rest", false],
  ["Key ON", "any S5", false],
  ["S2 OPEN", "held", false],
  ["S2 CLOSE", "held", false],
] as const;

const ROWS = [
  ["1", "BN/WH", "to S2", "g0 g0 g0.06 g0.32 p12.1 g0.32 g0 g0 p12.6 g0"],
  ["2", "GY", "to S2", "g0 g0 g0.32 g0.06 g0.32 p12.1 g0 g0 g0 p12.6"],
  ["4", "GN", "motor 1", "g0 g0 p12.2 g0.38 p12.1 g0.38 f f f f"],
  ["5", "YE/BK", "motor 2", "g0 g0 g0.38 p12.2 g0.38 p12.1 f f f f"],
  ["6", "OG/BK", "feed, SP1", "f p12.6 p12.2 p12.2 p12.5 p12.5 f p12.6 p12.6 p12.6"],
] as const;

/** The pictured position table of plug X5. */
export const VENT_TABLE: PositionTable = {
  connector: "X5",
  columns: COLUMNS.map(([title, under, plugged]) => ({
    title,
    under,
    plugged,
    condition: {},
    merged: title === "Key OFF" ? ["lock-out ON with the key on"] : [],
  })),
  rows: ROWS.map(([pin, colour, leadsTo, cells]) => ({
    point: `X5-${pin}`,
    pin,
    colour,
    leadsTo,
    cells: cells.split(" ").map(tableCell),
  })),
};
