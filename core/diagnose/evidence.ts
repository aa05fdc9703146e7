import type { Share } from "../base/units.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { fuseAcross } from "./inPlace.ts";
import { bestFit, elsewhereOf, fitOf, likelihoodOf, mistakenAt, wrongOf } from "./likelihood.ts";
import { type Probe, probeText, type Reading } from "./reading.ts";
import { shownTo } from "./shown.ts";
import type { Fineness } from "./spread.ts";
import type { Suspected } from "./suspects.ts";

/** Share that is kept for what is not on the drawing before anything is read (a guess). */
export const ELSEWHERE: Share = 0.02;

/** What all suspects weigh after the readings, and how each reading fits each. */
export interface Evidence {
  /** Probability of each suspect, as they were given; with `elsewhere` they add up to 1. */
  readonly shares: readonly Share[];
  readonly elsewhere: Share;
  /** By reading, then by suspect: how well it fits, 1 where it is just what that suspect shows; none of a struck one. */
  readonly fits: readonly (readonly number[])[];
}

/** Whether a probe is read in ohms, amps or volts or, across a fuse that is in its place, in millivolts; in tenths where all sleeps. */
export function finenessOf(
  circuit: Circuit,
  { red, black, lampTo, instrument }: Pick<Probe, "red" | "black" | "lampTo" | "instrument">,
  isAsleep = false,
): Fineness {
  if (instrument === "meter ohms") return "ohms";
  if (instrument === "clamp") return "amps";
  if (lampTo !== null || !fuseAcross(circuit, red, black)) return "volts";
  return isAsleep ? "tenths" : "millivolts";
}

/**
 * Weighs suspects by what was read. Battery volts, where they were measured, scale the readings to the battery of the
 * drawing. No weight ever reaches nought.
 */
export function weighed(
  circuit: Circuit,
  complaint: Condition,
  suspected: readonly Suspected[],
  readings: readonly Reading[],
  scale = 1,
  isAsleep = false,
): Evidence {
  const read = readings.map((reading) => ({
    ...reading,
    // A lamp in a fuse's place is only looked at.
    volts: reading.volts === null || reading.lampTo === "black" ? null : reading.volts * scale,
    ...(reading.amps === undefined ? {} : { amps: reading.amps * scale }),
  }));
  const finenesses = read.map((reading) => finenessOf(circuit, reading, isAsleep));
  const mistaken = read.map((reading) => mistakenAt(circuit, reading));
  const planted = suspected.map(({ possible }) => possible);
  const predictions = read.map((reading) =>
    reading.standing === "struck" ? [] : shownTo(circuit, complaint, planted, reading),
  );
  const fits = read.map((reading, index) =>
    predictions[index]!.map((shown) => fitOf(reading, shown, finenesses[index]!, mistaken[index]!)),
  );
  const wrongs = read.map((reading, index) => wrongOf(reading, circuit.nominalVolts, finenesses[index]!));
  const groups = sameLeads(read);
  const prior = suspected.reduce((sum, { weight }) => sum + weight, 0) || 1;
  const logs = suspected.map(({ weight }, suspect) => {
    const told = groups.reduce((sum, group) => {
      const likelihood = likelihoodOf(
        group.map((index) => fits[index]![suspect]!),
        group.map((index) => wrongs[index]!),
        group.map((index) => read[index]!.standing === "doubted"),
      );
      return sum + Math.log(likelihood);
    }, 0);
    return Math.log(((1 - ELSEWHERE) * weight) / prior) + told;
  });
  const other = groups
    .flat()
    .reduce(
      (sum, index) => sum + Math.log(elsewhereOf(read[index]!, circuit.nominalVolts, finenesses[index]!)),
      Math.log(ELSEWHERE),
    );
  const most = Math.max(other, ...logs);
  const weights = logs.map((log) => Math.exp(log - most));
  const elsewhere = Math.exp(other - most);
  const total = weights.reduce((sum, weight) => sum + weight, elsewhere);
  return {
    shares: weights.map((weight) => weight / total),
    elsewhere: elsewhere / total,
    fits: fits.map((each, index) =>
      each.map((fit, suspect) => fit / bestFit(predictions[index]![suspect]!, finenesses[index]!, mistaken[index]!)),
    ),
  };
}

/**
 * Readings that count, by number, those with the same leads together: a wrong pin is wrong in every position of a sweep,
 * and again when it is read again.
 */
function sameLeads(readings: readonly Reading[]): readonly (readonly number[])[] {
  const groups = new Map<string, number[]>();
  readings.forEach((reading, index) => {
    if (reading.standing === "struck") return;
    const key = probeText({ ...reading, condition: {} });
    groups.set(key, [...(groups.get(key) ?? []), index]);
  });
  return [...groups.values()];
}
