import { VENTS } from "../given.ts";
import { busy, CHECK, latched, melted, mended, noted, vents } from "./benches.ts";
import type { SomeCases } from "./cases.ts";

const READING = {
  red: "X5-6",
  black: "battery -",
  instrument: "meter volts",
  lampTo: null,
  condition: { set: { S1: "on" } },
  volts: 0.02,
  word: null,
  standing: "taken",
  time: null,
} as const;
const read = { ...vents, readings: [READING] };

/** Commands that change how the circuit stands: controls, plugs, faults, what was observed. */
export const STANDING_CASES = {
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
  "set-up-with": {
    good: [
      [busy, {}, []],
      [vents, VENTS.checks[0]!.condition, ["W13:open"]],
      [busy, {}, ["W13:open", "X5-6:corroded=20"]],
      [melted, {}, []],
    ],
    bad: [
      ["condition-control", vents, { set: { S99: "on" } }, []],
      ["fault-target", vents, {}, ["W99:open"]],
      ["already-so", vents, {}, []],
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
  "take-readings": {
    good: [
      [vents, [READING]],
      [read, [READING, { ...READING, condition: {} }]],
    ],
    bad: [
      ["reading-empty", vents, []],
      ["reading-misfit", vents, [{ ...READING, red: "X99-1" }]],
      ["reading-misfit", vents, [{ ...READING, condition: { apart: ["X99"] } }]],
    ],
  },
  "mark-reading": {
    good: [
      [read, 1, "doubted"],
      [read, 1, "struck"],
    ],
    bad: [
      ["reading-none", read, 2, "struck"],
      ["already-so", read, 1, "taken"],
    ],
  },
  "remove-reading": { good: [[read, 1]], bad: [["reading-none", vents, 1]] },
  "clear-readings": {
    good: [[read], [{ ...vents, batteryVolts: 12.4 }]],
    bad: [["readings-none", vents]],
  },
  "set-battery-volts": {
    good: [
      [vents, "12,4 V"],
      [{ ...vents, batteryVolts: 12.4 }, ""],
    ],
    bad: [
      ["battery-volts", vents, "24"],
      ["battery-volts", vents, "much"],
      ["already-so", vents, ""],
    ],
  },
  "take-wiggled": {
    good: [
      [vents, "X5", { min: 2.1, max: 11.8, when: "bumped" }],
      [{ ...vents, wiggled: [{ place: "X5", min: 2.1, max: 11.8, when: "" }] }, "X5", { min: 11, max: 12, when: "" }],
      [{ ...vents, wiggled: [{ place: "X5", min: 2.1, max: 11.8, when: "" }] }, "X5", null],
    ],
    bad: [
      ["wiggle-shape", vents, "X5", { min: Number.NaN, max: 1, when: "" }],
      ["already-so", vents, "X5", null],
    ],
  },
  "set-when": {
    good: [
      [vents, "wet", true],
      [{ ...vents, when: ["hot", "wet"] }, "hot", false],
    ],
    bad: [
      ["already-so", vents, "wet", false],
      ["wiggle-when", vents, "always", true],
    ],
  },
  "set-sleeping-amps": {
    good: [
      [vents, "35"],
      [vents, "0,05 A"],
      [{ ...vents, sleepingAmps: 0.035 }, ""],
    ],
    bad: [
      ["sleeping-amps", vents, "nothing"],
      ["sleeping-amps", vents, "50 A"],
      ["already-so", { ...vents, sleepingAmps: 0.035 }, "35 mA"],
    ],
  },
  "choose-complaint": {
    good: [
      [vents, CHECK],
      [vents, "battery-goes-flat"],
      [noted, null],
      [{ ...vents, observed: { [CHECK]: "works" } }, CHECK],
    ],
    bad: [
      ["no-check", vents, "no-such"],
      ["already-so", noted, CHECK],
      ["already-so", vents, null],
    ],
  },
} as const satisfies SomeCases;
