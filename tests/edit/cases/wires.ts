import type { Circuit } from "../../../core/circuit/circuit.ts";
import { VENTS } from "../given.ts";
import { vents } from "./benches.ts";
import type { SomeCases } from "./cases.ts";

/** On the vehicle, one wire is not as printed. */
const SEEN: Circuit = {
  ...VENTS,
  wires: VENTS.wires.map((wire) => (wire.id === "W13" ? { ...wire, seen: { colour: "BN", to: "3" } } : wire)),
};

/** Commands that draw wires. */
export const WIRE_CASES = {
  "draw-wire": {
    good: [
      [vents, "F1.2", "F2.1"],
      [
        vents,
        "S3.6",
        "S4.6",
        {
          colour: "bu/wh",
          mm2: 1.5,
          metres: 2,
          bends: [
            [70.4, 62],
            [70, 61.6],
            [86, 62],
          ],
        },
      ],
      [vents, "G1.-", "GP2.stud", { colour: " " }],
    ],
    bad: [
      ["point-part", vents, "F99.1", "F2.1"],
      ["point-spelling", vents, "F2.1", "nowhere"],
      ["cavity-empty", vents, "X5-3", "F2.1"],
      ["terminal-bare", vents, "F2.1", "GP1.body"],
      ["wire-to-itself", vents, "S5.6", "X5-6"],
      ["wire-there", vents, "S5.6", "SP1.3"],
      ["colour-unknown", vents, "F1.2", "F2.1", { colour: "mauve" }],
      ["amount-limits", vents, "F1.2", "F2.1", { mm2: 0 }],
      ["amount-limits", vents, "F1.2", "F2.1", { metres: Number.NaN }],
      ["bend-off-page", vents, "F1.2", "F2.1", { bends: [[14, 999]] }],
      ["bends-many", vents, "F1.2", "F2.1", { bends: Array.from({ length: 401 }, (_, x) => [x, 3]) }],
    ],
  },
  "draw-wires": {
    good: [
      [
        vents,
        [
          { from: "F1.2", to: "F2.1", colour: "RD" },
          { from: "S3.6", to: "S4.6", bends: [[80, 60]] },
        ],
      ],
    ],
    bad: [
      ["wires-none", vents, []],
      [
        "wire-there",
        vents,
        [
          { from: "F1.2", to: "F2.1" },
          { from: "F2.1", to: "F1.2" },
        ],
      ],
      ["point-terminal", vents, [{ from: "F1.2", to: "F2.9" }]],
    ],
  },
  "wire-across": {
    good: [
      [vents, "X3", "X5", "GY og - BK"],
      [vents, "X4", "X30-a"],
      [vents, "X31-b", "X32-b", "rd,bn"],
    ],
    bad: [
      ["side-unknown", vents, "X99", "X5"],
      ["side-unknown", vents, "X3", "X30"],
      ["wires-none", vents, "X5", "X5"],
      ["pages-several", vents, "X8", "X30-a"],
      ["colours-many", vents, "X30-a", "X31-a", "RD BN GN"],
      ["colour-unknown", vents, "X3", "X5", "RD mauve"],
    ],
  },
  "recolour-wires": {
    good: [
      [vents, ["W1", "W2", "W3"], "GY og/bk - "],
      [vents, ["W1", "W2", "W3"], "vt"],
    ],
    bad: [
      ["wires-none", vents, [], "RD"],
      ["wire-unknown", vents, ["W1", "W99"], "GY"],
      ["colours-many", vents, ["W1"], "RD BN"],
      ["colour-unknown", vents, ["W1"], "mauve"],
      ["already-so", vents, ["W1", "W2"], " - "],
    ],
  },
  "resize-wires": {
    good: [
      [vents, ["W1", "W2", "W2"], "0.75 mm2"],
      [vents, ["W1", "W3"], "AWG 18"],
    ],
    bad: [
      ["wires-none", vents, [], "1"],
      ["wire-unknown", vents, ["W1", "W99"], "0.75"],
      ["amount-limits", vents, ["W1"], "0"],
      ["already-so", vents, ["W1"], `${VENTS.wires[0]?.mm2}`],
    ],
  },
  "note-seen": {
    good: [
      [vents, ["W13"], { colour: "bn" }],
      [vents, ["W1", "W2", "W1"], {}],
      [vents, ["W13"], { from: "4", to: "X5-3", colour: VENTS.wires.find(({ id }) => id === "W13")?.colour }],
      [{ ...vents, circuit: SEEN }, ["W13", "W1"], null],
      [{ ...vents, circuit: SEEN }, ["W13"], { colour: "", to: "6" }],
    ],
    bad: [
      ["wires-none", vents, [], {}],
      ["wire-unknown", vents, ["W99"], {}],
      ["colour-unknown", vents, ["W13"], { colour: "mauve" }],
      ["cavity-spelling", vents, ["W13"], { to: "3 or 4" }],
      ["cavity-spelling", vents, ["W13"], { to: "toString" }],
      ["already-so", vents, ["W13"], null],
      ["already-so", { ...vents, circuit: SEEN }, ["W13"], {}],
    ],
  },
  "draw-wire-to-wire": {
    good: [
      [vents, "F2.1", "W5", { x: 46, y: 46 }, { colour: "RD", mm2: 1 }],
      [vents, "F3.1", "W2", { x: 30, y: 9.8 }],
      [vents, "M4.1", "W13", { x: 103, y: 56 }],
      [vents, "F2.1", "W54", { x: 48, y: 19 }],
      [vents, "GP2.stud", "W61", { x: 51, y: 50 }],
    ],
    bad: [
      ["wire-unknown", vents, "F2.1", "W99", { x: 0, y: 0 }],
      ["point-part", vents, "F99.1", "W5", { x: 0, y: 0 }],
      ["wire-there", vents, "F4.2", "W5", { x: 46, y: 46 }],
      ["wire-there", vents, "X3-6", "W13", { x: 103, y: 56 }],
      ["wire-to-itself", vents, "SP1.2", "W13", { x: 103, y: 56 }],
      ["colour-unknown", vents, "F2.1", "W5", { x: 46, y: 46 }, { colour: "mauve" }],
      [
        "wire-not-drawn",
        { ...vents, circuit: { ...vents.circuit, placement: { parts: {}, wires: {} } } },
        "F2.1",
        "W5",
        { x: 46, y: 46 },
      ],
    ],
  },
  "bend-wire": {
    good: [
      [
        vents,
        "W4",
        [
          [20, 46.4],
          [20, 46],
          [24, 46],
        ],
      ],
      [vents, "W5", []],
    ],
    bad: [
      ["wire-unknown", vents, "W99", []],
      ["bend-off-page", vents, "W4", [[-1, 4]]],
      ["already-so", vents, "W4", []],
      ["already-so", vents, "W5", [[58.2, 46]]],
    ],
  },
  "reattach-wire": {
    good: [
      [vents, "W13", "from", "F4.2"],
      [vents, "W14", "to", "S2.C2"],
    ],
    bad: [
      ["wire-unknown", vents, "W99", "from", "F4.2"],
      ["point-part", vents, "W13", "from", "F99.2"],
      ["cavity-empty", vents, "W13", "from", "X5-3"],
      ["wire-to-itself", vents, "W13", "from", "S5.6"],
      ["wire-there", vents, "W9", "to", "K1.30"],
      ["already-so", vents, "W13", "to", "S5.6"],
    ],
  },
} as const satisfies SomeCases;
