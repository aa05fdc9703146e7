import { benchFor } from "../../../core/edit/bench.ts";
import { pinParts } from "../../../core/edit/commands/pinParts.ts";
import { plantFault } from "../../../core/edit/commands/plantFault.ts";
import { copied } from "../../../core/edit/fragment.ts";
import { afterAll, ROW, SMALL, VENTS } from "../given.ts";
import { busy, latched, melted, noted, vents } from "./benches.ts";
import type { SomeCases } from "./cases.ts";

const small = benchFor(SMALL);
const row = benchFor(ROW);

const crossed = afterAll(VENTS, (bench) => plantFault(bench, "W7:crossed=W9"));

/** A page link at the foot of its page. */
const low = benchFor({
  ...SMALL,
  placement: { ...SMALL.placement, parts: { ...SMALL.placement.parts, L1: { page: "p1", x: 80, y: 82 } } },
});

const pinned = afterAll(SMALL, (bench) => pinParts(bench, ["M1"], true));

/** Commands that draw parts and change what is selected. */
export const PART_CASES = {
  "add-part": {
    good: [
      [vents, "switch", "p1", 2, 2],
      [vents, "page-link", "p4", 10.4, 9.7, { turn: 90, flip: true, label: "  To  the trailer " }],
      [busy, "connector", "p2", 4, 4, { settings: { ways: 3 } }],
      [vents, "fuse", "p1", 2, 2, { settings: { amps: 5, family: "mini" } }],
      [vents, "battery", "p1", 2, 2, { settings: { reference: false } }],
    ],
    bad: [
      ["kind-unknown", vents, "flux", "p1", 2, 2],
      ["kind-unknown", vents, "toString", "p1", 2, 2],
      ["page-unknown", vents, "fuse", "p9", 2, 2],
      ["off-the-page", vents, "fuse", "p1", -1, 2],
      ["part-hidden", small, "fuse", "p1", 4, 20],
      ["part-hidden", small, "battery", "p1", 4.2, 19.8],
      ["setting-unknown", vents, "fuse", "p1", 2, 2, { settings: { ohms: 1 } }],
      ["setting-type", vents, "fuse", "p1", 2, 2, { settings: { amps: "5" } }],
      ["setting-limits", vents, "fuse", "p1", 2, 2, { settings: { amps: Number.NaN } }],
      ["setting-choice", vents, "fuse", "p1", 2, 2, { settings: { family: "huge" } }],
      ["setting-needed", vents, "page-link", "p1", 2, 2, { settings: { name: "" } }],
      ["label-long", vents, "fuse", "p1", 2, 2, { label: "x".repeat(161) }],
    ],
  },
  "add-assembly": {
    good: [
      [vents, "relay-with-fuse", "p1", 4, 4],
      [busy, "reversing-switch", "p4", 2.4, 2.6],
      [{ ...small, circuit: { ...SMALL, nominalVolts: 24 } }, "lamp-pair", "p2", 40, 4],
      [small, "connector-pair", "p1", 4, 20],
    ],
    bad: [
      ["assembly-unknown", vents, "toString", "p1", 4, 4],
      ["page-unknown", vents, "lamp-pair", "p9", 4, 4],
      ["off-the-page", vents, "lamp-pair", "p1", 4, -200],
    ],
  },
  "rename-part": {
    good: [
      [busy, "S5", "B12"],
      [vents, "X30", "X99"],
      [latched, "K1", " K_main/2 "],
      [melted, "F1", "F9"],
      [noted, "U1", "A1"],
    ],
    bad: [
      ["part-unknown", vents, "M99", "M7"],
      ["id-empty", vents, "M3", "  "],
      ["id-long", vents, "M3", "M".repeat(41)],
      ["id-spelling", vents, "M3", "3M"],
      ["id-spelling", vents, "M3", "M 3"],
      ["id-spelling", vents, "M3", "M.3"],
      ["id-spelling", vents, "M3", "toString"],
      ["id-taken", vents, "M3", "M1"],
      ["id-taken", vents, "M3", "W13"],
      ["id-taken", vents, "M3", "X5"],
      ["already-so", vents, "M3", "M3"],
    ],
  },
  "rename-wire": {
    good: [
      [busy, "W13", "13"],
      [small, "W2", "0"],
      [crossed, "W9", "W99"],
    ],
    bad: [
      ["wire-unknown", vents, "M3", "W99"],
      ["id-spelling", vents, "W13", "W-13"],
      ["id-spelling", vents, "W13", "__proto__"],
      ["id-taken", vents, "W13", "W1"],
      ["id-taken", vents, "W13", "M3"],
      ["already-so", vents, "W13", "W13"],
    ],
  },
  "relabel-connector": {
    good: [
      [busy, "X5", " Behind the  dash "],
      [vents, "X30", ""],
    ],
    bad: [
      ["point-connector", vents, "M3", "Plug"],
      ["label-long", vents, "X5", "x".repeat(161)],
      ["already-so", vents, "X5", "Plug of S5"],
    ],
  },
  "rename-connector": {
    good: [
      [busy, "X5", "X50"],
      [busy, "X30", "C3"],
      [small, "X1", "X3"],
    ],
    bad: [
      ["point-connector", vents, "M3", "X99"],
      ["id-spelling", vents, "X5", "5X"],
      ["id-taken", vents, "X5", "X30"],
      ["already-so", vents, "X5", "X5"],
    ],
  },
  "duplicate-things": {
    good: [
      [vents, ["M1"], 4, 0],
      [vents, ["S5", "M3", "X32"], 2, 2],
      [busy, VENTS.parts.map(({ id }) => id), 0, 0],
      [small, ["S1", "X2", "M1", "L2"], 1, 1],
      [row, ["M1", "S1"], 0, 0],
    ],
    bad: [
      ["nothing-chosen", vents, [], 1, 1],
      ["part-unknown", vents, ["M3", "X5"], 1, 1],
      ["off-the-page", vents, ["M3"], 400, 0],
    ],
  },
  paste: {
    good: [
      [vents, copied(VENTS, ["S5", "M3", "X32"]), "p1", 4, 4],
      [busy, copied(SMALL, ["G1", "F1", "S1", "GP1"]), "p4", 2.4, 2.6],
      [small, copied(VENTS, ["G1", "F1", "GP1"]), "p2", 40, 4],
      [row, copied(ROW, ["M1", "S1"]), "p1", 0, 0],
      [
        { ...small, circuit: { ...SMALL, nominalVolts: 24, colourCodes: "free" } },
        copied(VENTS, ["K1", "F3"]),
        "p2",
        40,
        4,
      ],
    ],
    bad: [
      ["nothing-chosen", vents, copied(VENTS, ["W13"]), "p1", 4, 4],
      ["page-unknown", vents, copied(VENTS, ["M3"]), "p9", 4, 4],
      ["off-the-page", vents, copied(VENTS, ["M3"]), "p1", 4, -120],
      ["part-kind", vents, { ...copied(VENTS, ["M3"]), parts: [{ id: "M3", kind: "flux" }] }, "p1", 4, 4],
    ],
  },
  "replace-kind": {
    good: [
      [busy, "F3", "breaker"],
      [vents, "E1", "led"],
      [vents, "M1", "heater"],
      [noted, VENTS.checks[0]!.load, "resistor"],
      [busy, "S5", "limit-switch"],
      [vents, "E1", "switch"],
      [vents, "K1", "resistor-pack"],
      [melted, "F1", "resistor"],
      [small, "L1", "splice"],
      [small, "GP1", "resistor"],
    ],
    bad: [
      ["part-unknown", vents, "M99", "lamp"],
      ["kind-unknown", vents, "M3", "flux"],
      ["already-so", vents, "M3", "motor"],
      ["terminals-lost", vents, "K1", "flasher"],
      ["terminals-lost", vents, "S5", "fuse"],
      ["terminals-lost", small, "X2", "fuse"],
      ["terminals-lost", small, "GP1", "page-link"],
      ["off-the-page", low, "L1", "splice"],
    ],
  },
  "remove-things": {
    good: [
      [vents, ["M3"]],
      [vents, ["W13"]],
      [vents, ["X5"]],
      [vents, ["X30", "K1", "W13", "X3", "SP1"]],
      [busy, ["S5", "W13", "M1", "F5", "X30"]],
      [busy, VENTS.parts.map(({ id }) => id)],
      [small, ["S1"]],
      [small, ["X1", "X2"]],
      [noted, ["U1", VENTS.checks[0]!.load]],
      [latched, ["K1"]],
      [melted, ["F1"]],
    ],
    bad: [
      ["nothing-chosen", vents, []],
      ["thing-unknown", vents, ["M3", "M99"]],
      ["thing-unknown", vents, ["X5-6"]],
    ],
  },
  "move-things": {
    good: [
      [vents, ["M3", "S5"], 1, 2],
      [vents, ["M3", "M3"], 0.6, -0.4],
      [busy, ["X30", "M1", "S3"], 0, 1],
    ],
    bad: [
      ["nothing-chosen", vents, [], 1, 1],
      ["part-unknown", vents, ["M3", "M99"], 1, 1],
      ["not-placed", row, ["M1"], 1, 1],
      ["off-the-page", vents, ["M3", "S5"], -500, 0],
      ["part-hidden", small, ["G1", "S1"], 0, -20],
      ["already-so", vents, ["M3", "S5"], 0.2, 0],
    ],
  },
  "turn-things": {
    good: [
      [small, ["M1"], "clockwise"],
      [small, ["X2", "M1", "S1"], "back"],
    ],
    bad: [
      ["nothing-chosen", vents, [], "back"],
      ["part-unknown", vents, ["M99"], "back"],
      ["not-placed", row, ["M1"], "clockwise"],
      ["pages-several", small, ["M1", "L2"], "clockwise"],
      ["off-the-page", small, ["G1", "GP1"], "clockwise"],
    ],
  },
  "flip-things": {
    good: [
      [small, ["M1"]],
      [small, ["S1", "X2"]],
    ],
    bad: [
      ["nothing-chosen", vents, []],
      ["part-unknown", vents, ["M99"]],
      ["not-placed", row, ["M1"]],
      ["pages-several", small, ["M1", "L2"]],
    ],
  },
  "align-things": {
    good: [
      [small, ["F1", "M1", "S1"], "left"],
      [small, ["G1", "M1"], "middle-across"],
      [small, ["G1", "M1"], "middle-down"],
      [small, ["G1", "M1"], "bottom"],
      [small, ["GP1", "M1"], "top"],
      [small, ["G1", "M1"], "right"],
    ],
    bad: [
      ["parts-few", small, ["M1", "M1"], "left"],
      ["part-unknown", small, ["M1", "M99"], "left"],
      ["not-placed", row, ["M1", "F1"], "left"],
      ["pages-several", small, ["M1", "L2"], "left"],
      ["part-hidden", small, ["F1", "G1"], "bottom"],
      ["already-so", small, ["F1", "X2"], "top"],
    ],
  },
  "distribute-things": {
    good: [
      [small, ["F1", "M1", "X2"], "across"],
      [small, ["F1", "G1", "GP1", "M1"], "down"],
    ],
    bad: [
      ["parts-few", small, ["M1", "F1"], "across"],
      ["part-unknown", small, ["M1", "M99"], "across"],
      ["not-placed", row, ["M1", "F1", "S1"], "across"],
      ["pages-several", small, ["M1", "L2", "F1"], "across"],
      ["no-room", small, ["F1", "X2", "S1"], "down"],
    ],
  },
  "arrange-parts": {
    good: [
      [small, { M1: { ...SMALL.placement.parts.M1!, x: SMALL.placement.parts.M1!.x + 1 } }],
      [small, { M1: { ...SMALL.placement.parts.M1!, turn: 180 }, F1: SMALL.placement.parts.F1! }],
    ],
    bad: [
      ["nothing-chosen", small, {}],
      ["part-unknown", small, { M99: SMALL.placement.parts.M1! }],
      ["not-placed", row, { M1: { page: "p1", x: 1, y: 1 } }],
      ["part-pinned", pinned, { M1: { ...SMALL.placement.parts.M1!, x: 9 } }],
      ["page-unknown", small, { M1: { ...SMALL.placement.parts.M1!, page: "p9" } }],
      ["off-the-page", small, { M1: { ...SMALL.placement.parts.M1!, x: -4 } }],
      ["already-so", small, { M1: SMALL.placement.parts.M1! }],
    ],
  },
  "pin-parts": {
    good: [
      [small, ["M1", "F1"], true],
      [pinned, ["M1", "F1"], false],
    ],
    bad: [
      ["nothing-chosen", small, [], true],
      ["part-unknown", small, ["M99"], true],
      ["not-placed", row, ["M1"], true],
      ["already-so", pinned, ["M1"], true],
      ["already-so", small, ["M1"], false],
    ],
  },
} as const satisfies SomeCases;
