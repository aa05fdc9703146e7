import type { Volts } from "../base/units.ts";
import { type Fineness, gapAt } from "./spread.ts";

/**
 * Cuts readings into clusters where a gap parts them, lowest first; returns the cluster number of each reading. Limits
 * so cut lie between the readings that suspects would give, not at the ends of a printed range.
 */
export function clusters(readings: readonly Volts[], fineness: Fineness = "volts"): readonly number[] {
  const order = readings.map((_, index) => index).sort((one, other) => readings[one]! - readings[other]!);
  const numbers = new Array<number>(readings.length).fill(0);
  let cluster = 0;
  for (let rank = 1; rank < order.length; rank++) {
    const below = readings[order[rank - 1]!]!;
    const here = readings[order[rank]!]!;
    if (here - below > gapAt(here, fineness)) cluster++;
    numbers[order[rank]!] = cluster;
  }
  return numbers;
}
