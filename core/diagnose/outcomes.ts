import type { Volts } from "../base/units.ts";
import { brightness, testLamp } from "../trade/instruments.ts";
import { type Candidate, lampOf } from "./candidates.ts";
import { lampReads, meterReads, type Shown } from "./predict.ts";
import { clusters } from "./weigh.ts";

/** A candidate row as every suspect would read it. Index 0 stands for the healthy circuit, the rest for suspects in order. */
export interface Column {
  readonly candidate: Candidate;
  /** Volts by setting, then by circuit. */
  readonly volts: readonly (readonly Volts[])[];
  /** Cluster number by setting, then by circuit. */
  readonly classes: readonly (readonly number[])[];
  /** One label for each circuit: circuits with the same label are not parted by this row. */
  readonly labels: readonly string[];
}

/** Reads a candidate row off the predictions of the healthy circuit and of every suspect. */
export function columnOf(
  candidate: Candidate,
  point: number,
  all: readonly (readonly Shown[])[],
  nominalVolts: Volts,
): Column {
  const lamp = lampOf(candidate.instrument);
  const volts: Volts[][] = [];
  const classes: (readonly number[])[] = [];
  const words: string[][] = all.map(() => []);
  for (const condition of candidate.conditions) {
    const shown = all.map((conditions) => conditions[condition]!);
    const reads = shown.map((each) => {
      if (candidate.lampTo === null || lamp === null) return { volts: meterReads(each, point), lamp: "" };
      const { across, pointVolts } = lampReads(each, point, candidate.lampTo, testLamp(lamp, nominalVolts));
      return { volts: pointVolts, lamp: brightness(across, nominalVolts) };
    });
    const numbers = clusters(reads.map((read) => read.volts));
    volts.push(reads.map((read) => read.volts));
    classes.push(numbers);
    reads.forEach((read, circuit) => {
      words[circuit]!.push(`${numbers[circuit]}${read.lamp}`);
    });
  }
  return { candidate, volts, classes, labels: words.map((each) => each.join("|")) };
}

/** Name of a reading beside the healthy one: low, sag, right or high. Sag is lower but still the greater part. */
export function outcomeWord(volts: Volts, healthy: Volts, isSameClass: boolean): "low" | "sag" | "right" | "high" {
  if (isSameClass) return "right";
  if (volts > healthy) return "high";
  return volts > healthy / 2 ? "sag" : "low";
}
