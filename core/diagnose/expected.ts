import type { Volts } from "../base/units.ts";
import type { Circuit } from "../circuit/circuit.ts";
import type { Probe } from "./reading.ts";
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

/** What the good circuit shows a probe, solved anew with the instrument in it. */
export function expectedOf(
  circuit: Circuit,
  { fineness, ...probe }: Probe & { readonly fineness: Fineness },
): Expected {
  const { shows } = readWith(circuit, [], null, probe);
  if (isBySense(probe.instrument)) return { low: 0, high: 0, unit: "V", lamp: null, word: shows.word };
  const lamp = shows.word as Expected["lamp"];
  const volts = shows.volts ?? 0;
  if (fineness !== "volts") {
    const millivolts = 1000 * volts;
    const [least, round] = fineness === "tenths" ? [SPREAD_TENTHS, tenth] : [SPREAD_MILLIVOLTS, Math.round];
    const spread = Math.max(least, SPREAD_FINE * Math.abs(millivolts));
    return { ...range(millivolts, spread, round), unit: "mV", lamp, word: null };
  }
  const spread = Math.max(SPREAD_VOLTS, SPREAD_SHARE * Math.abs(volts));
  return { ...range(volts, spread, tenth), unit: "V", lamp, word: null };
}

function range(value: number, spread: number, round: (value: number) => number): { low: number; high: number } {
  return { low: Math.max(0, round(value - spread)), high: Math.max(0, round(value + spread)) };
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}
