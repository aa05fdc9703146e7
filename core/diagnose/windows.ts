import type { Window } from "./step.ts";

/** A cluster of readings, from its lowest to its highest, and the nearest readings outside it on either side; infinite where none is. */
export interface Cluster {
  readonly low: number;
  readonly high: number;
  readonly below: number;
  readonly above: number;
}

/** The cluster of this number among readings of which the clusters are known. */
export function clusterOf(reads: readonly number[], classes: readonly number[], number: number): Cluster {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  let [below, above] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  reads.forEach((read, at) => {
    if (classes[at]! < number) below = Math.max(below, read);
    else if (classes[at]! > number) above = Math.min(above, read);
    else [low, high] = [Math.min(low, read), Math.max(high, read)];
  });
  return { low, high, below, above };
}

/** Limits of a cluster between it and its neighbours, where `between` puts them; open where there is no neighbour. */
export function windowOf(
  { low, high, below, above }: Cluster,
  word: string,
  between: (one: number, other: number) => number,
): Window {
  return {
    low: Number.isFinite(below) ? between(below, low) : below,
    high: Number.isFinite(above) ? between(high, above) : above,
    word,
  };
}
