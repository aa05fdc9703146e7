import { stream } from "./solve/randomNetwork.ts";

/** Chance from a seed: the same draws for the same seed. */
export type Lots = ReturnType<typeof lotsOf>;

/** Draws lots from a stream of numbers that the seed alone decides. */
export function lotsOf(seed: number) {
  const next = stream(seed);
  const upTo = (count: number): number => Math.floor(next() * count);
  return {
    /** A whole number from 0 to below `count`. */
    upTo,
    between: (low: number, high: number): number => low + (high - low) * next(),
    /** Evenly over the powers of ten. */
    spread: (low: number, high: number): number => low * (high / low) ** next(),
    happens: (share: number): boolean => next() < share,
    oneOf: <T>(list: readonly T[]): T => list[upTo(list.length)]!,
    /** One of the keys, each as likely as its weight says. */
    weighted: <K extends string>(weights: Readonly<Record<K, number>>): K => {
      const entries = Object.entries(weights) as [K, number][];
      let left = next() * entries.reduce((sum, [, weight]) => sum + weight, 0);
      for (const [key, weight] of entries) {
        left -= weight;
        if (left < 0) return key;
      }
      return entries.at(-1)![0];
    },
  };
}
