import { liveNow } from "../../../core/edit/liveNow.ts";
import { freshInstrument, type InstrumentName } from "../../../core/live/instruments/clipped.ts";
import { vents } from "./benches.ts";
import type { SomeCases } from "./cases.ts";

const withOne = (instrument: InstrumentName) => ({ ...vents, clipped: [freshInstrument("1", instrument)] });
const meter = withOne("voltmeter");
const clamp = withOne("clamp");
const full = {
  ...vents,
  clipped: Array.from({ length: 12 }, (_, index) => freshInstrument(String(index + 1), "voltmeter")),
};
/** A jumper from post to post, its fuse melted at once. */
const shorted = {
  ...vents,
  clipped: [{ id: "1", instrument: "jumper", red: "battery +", black: "battery -", amps: 5 } as const],
};
/** The same, melted: clipped so it melts again whenever its fuse is renewed. */
const melted = { ...shorted, before: { condition: {}, ...liveNow(shorted).after } };

/** Commands on the instruments of the bench. */
export const INSTRUMENT_CASES = {
  "lay-instrument": {
    good: [
      [vents, "voltmeter"],
      [meter, "jumper"],
      [clamp, "clamp"],
    ],
    bad: [
      ["instruments-many", full, "clamp"],
      ["instrument-shape", vents, "oscilloscope"],
    ],
  },
  "put-instrument-away": {
    good: [
      [meter, "1"],
      [melted, "1"],
    ],
    bad: [["instrument-absent", vents, "1"]],
  },
  "clip-lead": {
    good: [
      [meter, "1", "red", "X5-6"],
      [meter, "1", "red", "battery+"],
      [meter, "1", "black", ""],
      [melted, "1", "black", "F1.2"],
    ],
    bad: [
      ["instrument-absent", vents, "1", "red", "X5-6"],
      ["instrument-leads", clamp, "1", "red", "X5-6"],
      ["leads-together", meter, "1", "red", "battery -"],
      ["already-so", meter, "1", "black", "battery -"],
      ["point-terminal", meter, "1", "red", "S5.99"],
    ],
  },
  "clamp-round": {
    good: [[clamp, "1", "W13"]],
    bad: [
      ["instrument-absent", vents, "1", "W13"],
      ["instrument-clamp", meter, "1", "W13"],
      ["wire-unknown", clamp, "1", "W999"],
      ["already-so", clamp, "1", null],
    ],
  },
  "change-instrument-amps": {
    good: [
      [withOne("jumper"), "1", "10"],
      [melted, "1", "40"],
      [withOne("stand-in"), "1", "2.5 A"],
    ],
    bad: [
      ["instrument-absent", vents, "1", "10"],
      ["instrument-amps", meter, "1", "10"],
      ["instrument-amps", clamp, "1", "10"],
      ["amount-limits", withOne("jumper"), "1", "500"],
      ["amount-spelling", withOne("jumper"), "1", "much"],
      ["already-so", withOne("jumper"), "1", "5 A"],
    ],
  },
  "renew-jumper": {
    good: [
      [{ ...melted, clipped: [{ ...melted.clipped[0]!, black: null }] }, "1"],
      [melted, "1"],
    ],
    bad: [
      ["instrument-absent", vents, "1"],
      ["jumper-whole", withOne("jumper"), "1"],
    ],
  },
} as const satisfies SomeCases;
