import { type Bench, benchFor } from "../../core/edit/bench.ts";
import { healFault } from "../../core/edit/commands/healFault.ts";
import type { CommandId } from "../../core/edit/commands/index.ts";
import { letGo } from "../../core/edit/commands/letGo.ts";
import { plantFault } from "../../core/edit/commands/plantFault.ts";
import { pullApart } from "../../core/edit/commands/pullApart.ts";
import { setBattery } from "../../core/edit/commands/setBattery.ts";
import { takeOut } from "../../core/edit/commands/takeOut.ts";
import { throwControl } from "../../core/edit/commands/throwControl.ts";
import { afterAll, LATCH, ROW, VENTS } from "./given.ts";

const CHECK = VENTS.checks[0]!.id;
const vents = benchFor(VENTS);
const busy = afterAll(
  VENTS,
  (bench) => throwControl(bench, "S1", "on"),
  (bench) => throwControl(bench, "S5", "open"),
  (bench) => pullApart(bench, "X30"),
  (bench) => takeOut(bench, "F5"),
  (bench) => setBattery(bench, true),
  (bench) => plantFault(bench, "W13:ohms=2"),
  (bench) => plantFault(bench, "M1:seized"),
);
const melted = afterAll(
  ROW,
  (bench) => throwControl(bench, "S1", "on"),
  (bench) => plantFault(bench, "W3:short-to-ground"),
);
const mended = afterAll(
  ROW,
  (bench) => throwControl(bench, "S1", "on"),
  (bench) => plantFault(bench, "W3:short-to-ground"),
  (bench) => healFault(bench, "W3:short-to-ground"),
);
const latched = afterAll(
  LATCH,
  (bench) => throwControl(bench, "S1", "in"),
  (bench) => letGo(bench, "S1"),
);
const noted: Bench = { ...vents, complaint: CHECK, observed: { [CHECK]: "dead" } };

/** What a command is tried with. */
interface Cases {
  /** A bench and what to give: the command makes an edit. */
  readonly good: readonly (readonly [Bench, ...unknown[]])[];
  /** A code, a bench and what to give: the command refuses with the code. */
  readonly bad: readonly (readonly [string, Bench, ...unknown[]])[];
}

/** Good and bad cases of every command. */
export const CASES: Readonly<Record<CommandId, Cases>> = {
  "throw-control": {
    good: [
      [vents, "S1", "on"],
      [busy, "S5", "close"],
      [busy, "S1", "off"],
      [vents, "S2.middle", "open"],
    ],
    bad: [
      ["condition-control", vents, "S99", "on"],
      ["condition-position", vents, "S1", "up"],
      ["already-so", vents, "S1", "off"],
      ["already-so", busy, "S5", "open"],
    ],
  },
  "let-go": {
    good: [[busy, "S5"]],
    bad: [
      ["not-held", busy, "S1"],
      ["not-held", vents, "S5"],
      ["not-held", vents, "S99"],
    ],
  },
  "rest-all": { good: [[busy], [latched], [melted]], bad: [["at-rest", vents]] },
  "set-up": {
    good: [
      [busy, {}],
      [vents, VENTS.checks[0]!.condition],
      [latched, {}],
      [vents, { set: { S1: "on" }, apart: [], batteryOff: false, ambientC: 60 }],
    ],
    bad: [
      ["condition-control", vents, { set: { S99: "on" } }],
      ["condition-ambient", vents, { ambientC: 900 }],
      ["already-so", vents, {}],
    ],
  },
  "pull-apart": {
    good: [
      [vents, "X30"],
      [busy, "X7"],
    ],
    bad: [
      ["condition-connector", vents, "X99"],
      ["condition-connector", vents, "S1"],
      ["already-so", busy, "X30"],
    ],
  },
  "push-home": {
    good: [[busy, "X30"]],
    bad: [
      ["not-apart", vents, "X30"],
      ["not-apart", busy, "X99"],
    ],
  },
  "take-out": {
    good: [
      [vents, "F3"],
      [vents, "K1"],
      [busy, "E1"],
    ],
    bad: [
      ["part-unknown", vents, "F99"],
      ["already-so", busy, "F5"],
      ["stays-in", vents, "SP1"],
      ["stays-in", vents, "G1"],
    ],
  },
  "put-in": { good: [[busy, "F5"]], bad: [["not-out", vents, "F5"]] },
  battery: {
    good: [
      [vents, true],
      [busy, false],
    ],
    bad: [
      ["already-so", vents, false],
      ["already-so", busy, true],
    ],
  },
  engine: { good: [[vents, true]], bad: [["already-so", vents, false]] },
  ambient: {
    good: [
      [vents, "80"],
      [busy, "-10 degC"],
      [{ ...vents, condition: { ambientC: 40 } }, ""],
    ],
    bad: [
      ["condition-ambient", vents, "200"],
      ["amount-unit", vents, "80 V"],
      ["amount-spelling", vents, "warm"],
      ["already-so", vents, ""],
    ],
  },
  "drive-output": {
    good: [
      [vents, "U1.close", "on"],
      [{ ...vents, condition: { drive: { "U1.close": "on" } } }, "U1.close", null],
    ],
    bad: [
      ["condition-drive", vents, "S5.6", "on"],
      ["point-terminal", vents, "U1.none", "on"],
      ["point-spelling", vents, "nowhere", "on"],
      ["already-so", vents, "U1.close", null],
    ],
  },
  "plant-fault": {
    good: [
      [vents, "W13:open"],
      [vents, "X30-1:corroded=20"],
      [busy, "W13:ohms=5"],
      [vents, "F3:blown"],
      [vents, "W7:crossed=W9"],
    ],
    bad: [
      ["fault-spelling", vents, "broken"],
      ["fault-target", vents, "W999:open"],
      ["fault-mode", vents, "W13:seized"],
      ["fault-value", vents, "W13:ohms=-1"],
      ["already-so", busy, "W13:ohms=2"],
    ],
  },
  "heal-fault": {
    good: [
      [busy, "W13:ohms=2"],
      [busy, "M1:seized"],
    ],
    bad: [
      ["fault-absent", busy, "W13:ohms"],
      ["fault-absent", vents, "W13:open"],
    ],
  },
  "heal-all": { good: [[busy], [melted]], bad: [["no-faults", vents]] },
  "show-faults": {
    good: [
      [busy, false],
      [{ ...busy, showFaults: false }, true],
    ],
    bad: [
      ["already-so", busy, true],
      ["no-faults", vents, false],
    ],
  },
  "replace-fuse": {
    good: [[mended, "F1"]],
    bad: [
      ["fuse-whole", vents, "F1"],
      ["fuse-whole", melted, "M1"],
      ["part-unknown", vents, "F99"],
    ],
  },
  "observe-check": {
    good: [
      [vents, CHECK, "dead"],
      [noted, CHECK, "works"],
      [noted, CHECK, "not-tried"],
    ],
    bad: [
      ["no-check", vents, "no-such", "dead"],
      ["observed-word", vents, CHECK, "odd"],
      ["already-so", noted, CHECK, "dead"],
      ["already-so", vents, CHECK, "not-tried"],
    ],
  },
  "choose-complaint": {
    good: [
      [vents, CHECK],
      [noted, null],
      [{ ...vents, observed: { [CHECK]: "works" } }, CHECK],
    ],
    bad: [
      ["no-check", vents, "no-such"],
      ["already-so", noted, CHECK],
      ["already-so", vents, null],
    ],
  },
  "move-part": {
    good: [
      [vents, "M3", { x: 50, y: 20 }],
      [vents, "M3", { x: 8.4, y: 8.6, page: "p1" }],
    ],
    bad: [
      ["part-unknown", vents, "M99", { x: 1, y: 1 }],
      ["page-unknown", vents, "M3", { x: 1, y: 1, page: "p99" }],
      ["off-the-page", vents, "M3", { x: -1, y: 10 }],
      ["off-the-page", vents, "M3", { x: 10, y: 118 }],
      ["not-placed", benchFor(ROW), "M1", { x: 1, y: 1 }],
      ["already-so", vents, "M3", VENTS.placement.parts.M3],
    ],
  },
  "turn-part": {
    good: [
      [vents, "M3", "clockwise"],
      [vents, "S2", "back"],
    ],
    bad: [
      ["part-unknown", vents, "M99", "clockwise"],
      ["not-placed", benchFor(ROW), "M1", "clockwise"],
    ],
  },
  "flip-part": {
    good: [[vents, "K2"]],
    bad: [
      ["part-unknown", vents, "M99"],
      ["not-placed", benchFor(ROW), "M1"],
    ],
  },
  "relabel-part": {
    good: [
      [vents, "M3", "  Other   motor "],
      [vents, "M3", ""],
    ],
    bad: [
      ["part-unknown", vents, "M99", "x"],
      ["label-long", vents, "M3", "x".repeat(161)],
      ["already-so", vents, "M3", "Middle vent motor"],
    ],
  },
  "change-setting": {
    good: [
      [vents, "F3", "amps", "20A"],
      [vents, "F3", "family", "Mini"],
      [vents, "K1", "coilOhms", "1k2"],
      [vents, "K1", "contactOhms", ""],
      [vents, "G1", "reference", "no"],
      [vents, "L1", "name", "Another feed"],
      [vents, "SP1", "legs", "6"],
    ],
    bad: [
      ["part-unknown", vents, "F99", "amps", "20"],
      ["setting-unknown", vents, "F3", "ohms", "1"],
      ["setting-limits", vents, "F3", "amps", "5000"],
      ["setting-choice", vents, "F3", "family", "enormous"],
      ["setting-choice", vents, "G1", "reference", "perhaps"],
      ["amount-unit", vents, "F3", "amps", "20 V"],
      ["amount-spelling", vents, "F3", "amps", "many"],
      ["setting-needed", vents, "L1", "name", " "],
      ["already-so", vents, "F3", "amps", "15 A"],
      ["point-terminal", vents, "SP1", "legs", "4"],
      ["point-terminal", vents, "K2", "form", "make"],
    ],
  },
  "recolour-wire": {
    good: [
      [vents, "W13", "BU-WH"],
      [vents, "W13", ""],
    ],
    bad: [
      ["wire-unknown", vents, "W99", "RD"],
      ["colour-unknown", vents, "W13", "mauve"],
      ["already-so", vents, "W1", "rd"],
    ],
  },
  "resize-wire": {
    good: [
      [vents, "W13", "0,75 mm2"],
      [vents, "W13", "AWG 18"],
      [vents, "W13", ""],
    ],
    bad: [
      ["wire-unknown", vents, "W99", "1"],
      ["amount-limits", vents, "W13", "600 mm2"],
      ["gauge-unknown", vents, "W13", "AWG 99"],
      ["amount-unit", vents, "W13", "2 m"],
      ["already-so", vents, "W1", "16"],
    ],
  },
  "change-length": {
    good: [
      [vents, "W13", "80 cm"],
      [vents, "W13", ""],
    ],
    bad: [
      ["wire-unknown", vents, "W99", "1"],
      ["amount-limits", vents, "W13", "-1 m"],
      ["amount-unit", vents, "W13", "2 mm2"],
      ["already-so", vents, "W1", "0.5 m"],
    ],
  },
  "change-ohms": {
    good: [[vents, "W13", "12 mohm"]],
    bad: [
      ["wire-unknown", vents, "W99", "1"],
      ["amount-limits", vents, "W13", "2 Mohm"],
      ["already-so", vents, "W13", ""],
    ],
  },
};
