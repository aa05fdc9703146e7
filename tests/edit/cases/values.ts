import { benchFor } from "../../../core/edit/bench.ts";
import { ROW, SMALL, VENTS } from "../given.ts";
import { vents } from "./benches.ts";
import type { SomeCases } from "./cases.ts";

/** Commands that change one part or wire: where it stands, what it is called, its values. */
export const VALUE_CASES = {
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
      ["part-hidden", benchFor(SMALL), "G1", { x: 4, y: 20 }],
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
      ["setting-order", vents, "K1", "dropOutVolts", "9 V"],
      ["setting-order", vents, "M1", "stall", "2 A"],
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
} as const satisfies SomeCases;
