import type { Volts } from "../base/units.ts";

/** Gap that parts two clusters of readings: at least this many volts, or this share of the higher one (a guess). */
export const CLUSTER_VOLTS: Volts = 0.12;
export const CLUSTER_SHARE = 0.03;

/**
 * Cuts readings into clusters where a gap parts them, lowest first; returns the cluster number of each reading. Limits
 * so cut lie between the readings that suspects would give, not at the ends of a printed range.
 */
export function clusters(readings: readonly Volts[]): readonly number[] {
  const order = readings.map((_, index) => index).sort((one, other) => readings[one]! - readings[other]!);
  const numbers = new Array<number>(readings.length).fill(0);
  let cluster = 0;
  for (let rank = 1; rank < order.length; rank++) {
    const below = readings[order[rank - 1]!]!;
    const here = readings[order[rank]!]!;
    if (here - below > Math.max(CLUSTER_VOLTS, CLUSTER_SHARE * Math.abs(here))) cluster++;
    numbers[order[rank]!] = cluster;
  }
  return numbers;
}

/** Entropy in bits of weights that need not add up to one. */
export function entropy(weights: Iterable<number>): number {
  let sum = 0;
  let plain = 0;
  for (const weight of weights) {
    if (weight <= 0) continue;
    sum += weight;
    plain += weight * Math.log2(weight);
  }
  return sum > 0 ? Math.log2(sum) - plain / sum : 0;
}

/**
 * Bits still missing about the repair when suspects are told apart only by `label`: the expected entropy over repair
 * groups within each label. Weights are the suspects' probabilities, as they stand.
 */
export function bitsLeft(labels: readonly string[], groups: readonly string[], weights: readonly number[]): number {
  const cells = new Map<string, Map<string, number>>();
  let total = 0;
  for (let index = 0; index < labels.length; index++) {
    const cell = cells.get(labels[index]!) ?? new Map<string, number>();
    cells.set(labels[index]!, cell);
    cell.set(groups[index]!, (cell.get(groups[index]!) ?? 0) + weights[index]!);
    total += weights[index]!;
  }
  let bits = 0;
  for (const cell of cells.values()) {
    const mass = [...cell.values()].reduce((sum, weight) => sum + weight, 0);
    bits += (mass / total) * entropy(cell.values());
  }
  return total > 0 ? bits : 0;
}
