import type { Living, Problem } from "./problem.ts";

const MOST_CLASSES = 256;

/**
 * Bits that a probe is expected to tell about the repair: the entropy over repairs of the living, less what is expected
 * to be left of it once they are parted by `classes` (one class a suspect). Suspects of one repair need not be parted.
 */
export type Tells = (living: Living, classes: Uint8Array) => number;

/**
 * The measure of information for a problem. It keeps its sums between calls, so that a sweep makes nothing new, and where
 * one repair ends and the next begins for as long as it is asked about the same living.
 */
export function tellsOf({ weights, repairs }: Problem): Tells {
  const mass = new Float64Array(MOST_CLASSES);
  const inRepair = new Float64Array(MOST_CLASSES);
  const ends = new Uint16Array(weights.length);
  let last: Living | null = null;
  let groups = 0;
  let total = 0;
  let wholes = new Float64Array(0);

  const look = (living: Living): void => {
    last = living;
    groups = 0;
    total = 0;
    wholes = new Float64Array(living.length);
    for (let start = 0; start < living.length; groups++) {
      const repair = repairs[living[start]!];
      let end = start;
      let together = 0;
      while (end < living.length && repairs[living[end]!] === repair) together += weights[living[end++]!]!;
      ends[groups] = end;
      wholes[groups] = plain(together);
      total += together;
      start = end;
    }
  };

  return (living, classes) => {
    if (living !== last) look(living);
    if (total <= 0) return 0;
    let gained = 0;
    let used = 0;
    for (let group = 0, start = 0; group < groups; group++) {
      const end = ends[group]!;
      const first = classes[living[start]!]!;
      let isParted = false;
      let top = first;
      for (let at = start; at < end; at++) {
        const each = living[at]!;
        const outcome = classes[each]!;
        inRepair[outcome]! += weights[each]!;
        if (outcome !== first) isParted = true;
        if (outcome > top) top = outcome;
      }
      if (isParted) {
        gained -= wholes[group]!;
        for (let at = start; at < end; at++) {
          const outcome = classes[living[at]!]!;
          const part = inRepair[outcome]!;
          if (part === 0) continue;
          gained += plain(part);
          mass[outcome]! += part;
          inRepair[outcome] = 0;
        }
      } else {
        // In one class the repair stands as it stood before: what it adds falls out.
        mass[first]! += inRepair[first]!;
        inRepair[first] = 0;
      }
      if (top >= used) used = top + 1;
      start = end;
    }
    let after = 0;
    let outcomes = 0;
    for (let outcome = 0; outcome < used; outcome++) {
      const part = mass[outcome]!;
      if (part === 0) continue;
      after += plain(part);
      outcomes++;
      mass[outcome] = 0;
    }
    return outcomes < 2 ? 0 : Math.max(0, (gained + plain(total) - after) / total);
  };
}

function plain(weight: number): number {
  return weight > 0 ? weight * Math.log2(weight) : 0;
}
