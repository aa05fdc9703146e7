import type { Amps, Ohms, Volts } from "../base/units.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { OPEN_FROM } from "../trade/instruments.ts";
import { figureOf, type Probe } from "./reading.ts";
import { readWith } from "./reads.ts";
import type { Fineness } from "./spread.ts";
import { type Expected, isBySense } from "./step.ts";

/** Half the width of a printed range: the spread of meter and battery, in volts and as a share (guesses). */
const SPREAD_VOLTS: Volts = 0.15;
const SPREAD_SHARE = 0.015;
/** The same on millivolts across a fuse, whose ohms are known to a fifth or so. */
const SPREAD_MILLIVOLTS = 1;
const SPREAD_FINE = 0.2;
/** The same where the vehicle sleeps: the last figure of the meter. */
const SPREAD_TENTHS = 0.1;

/** The same on ohms, where leads and clips count, and on amps, where a clamp's zero does (guesses). */
const SPREAD_OHMS: Ohms = 0.3;
const SPREAD_AMPS: Amps = 0.2;
const SPREAD_OTHER = 0.15;

/** What the good circuit shows a probe, solved anew with the instrument in it. */
export function expectedOf(
  circuit: Circuit,
  { fineness, ...probe }: Probe & { readonly fineness: Fineness },
): Expected {
  const { shows } = readWith(circuit, [], null, probe);
  if (isBySense(probe.instrument)) return { low: 0, high: 0, unit: "V", lamp: null, word: shows.word };
  const lamp = shows.word as Expected["lamp"];
  const read = figureOf(shows) ?? 0;
  if (fineness === "ohms" || fineness === "amps") {
    const [least, unit] = fineness === "ohms" ? ([SPREAD_OHMS, "ohm"] as const) : ([SPREAD_AMPS, "A"] as const);
    if (fineness === "ohms" && read >= OPEN_FROM) return { low: OPEN_FROM, high: OPEN_FROM, unit, lamp, word: null };
    return { ...range(read, Math.max(least, SPREAD_OTHER * read), tenth), unit, lamp, word: null };
  }
  if (fineness !== "volts") {
    const millivolts = 1000 * read;
    const [least, round] = fineness === "tenths" ? [SPREAD_TENTHS, tenth] : [SPREAD_MILLIVOLTS, Math.round];
    const spread = Math.max(least, SPREAD_FINE * Math.abs(millivolts));
    return { ...range(millivolts, spread, round), unit: "mV", lamp, word: null };
  }
  const spread = Math.max(SPREAD_VOLTS, SPREAD_SHARE * Math.abs(read));
  return { ...range(read, spread, tenth), unit: "V", lamp, word: null };
}

function range(value: number, spread: number, round: (value: number) => number): { low: number; high: number } {
  return { low: Math.max(0, round(value - spread)), high: Math.max(0, round(value + spread)) };
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}
