/** Numbers that look random and are the same for the same seed: each call gives one from 0 up to, not including, 1. */
export type Lots = () => number;

/** Lots from a whole number as seed (Steele, Lea and Flood, "Fast Splittable Pseudorandom Number Generators", 2014, at 32 bits). */
export function lotsFrom(seed: number): Lots {
  let state = seed | 0;
  return () => {
    state = (state + 0x9e3779b9) | 0;
    let mixed = state ^ (state >>> 16);
    mixed = Math.imul(mixed, 0x21f0aaad);
    mixed ^= mixed >>> 15;
    mixed = Math.imul(mixed, 0x735a2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 2 ** 32;
  };
}
