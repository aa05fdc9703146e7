import type { Living, Problem } from "./problem.ts";

const MOST_CLASSES = 256;

/**
 * Bits that a probe is expected to tell about the repair: the entropy over repairs of the living, less what is expected
 * to be left of it once they are parted by `classes` (one class a suspect). Suspects of one repair need not be parted.
 */
export type Tells = (living: Living, classes: Uint8Array) => number;

/** The measure of information for a problem. It keeps its sums between calls, so that a sweep makes nothing new. */
export function tellsOf({ weights, repairs }: Problem): Tells {
  const mass = new Float64Array(MOST_CLASSES);
  const inRepair = new Float64Array(MOST_CLASSES);
  const touched = new Uint8Array(MOST_CLASSES);
  const seen = new Uint8Array(MOST_CLASSES);

  return (living, classes) => {
    mass.fill(0);
    let total = 0;
    let gained = 0;
    let used = 0;
    for (let start = 0; start < living.length; ) {
      const repair = repairs[living[start]!];
      let end = start + 1;
      while (end < living.length && repairs[living[end]!] === repair) end++;
      if (end === start + 1) {
        // Alone in its repair it stands in one class as it stood before: what it adds falls out.
        const each = living[start]!;
        const outcome = classes[each]!;
        mass[outcome]! += weights[each]!;
        total += weights[each]!;
        if (outcome >= used) used = outcome + 1;
      } else {
        let count = 0;
        let together = 0;
        for (let at = start; at < end; at++) {
          const each = living[at]!;
          const outcome = classes[each]!;
          if (seen[outcome] === 0) {
            seen[outcome] = 1;
            touched[count++] = outcome;
          }
          inRepair[outcome]! += weights[each]!;
          together += weights[each]!;
          if (outcome >= used) used = outcome + 1;
        }
        for (let at = 0; at < count; at++) {
          const outcome = touched[at]!;
          const part = inRepair[outcome]!;
          gained += count === 1 ? 0 : plain(part);
          mass[outcome]! += part;
          inRepair[outcome] = 0;
          seen[outcome] = 0;
        }
        if (count > 1) gained -= plain(together);
        total += together;
      }
      start = end;
    }
    if (total <= 0) return 0;
    gained += plain(total);
    for (let outcome = 0; outcome < used; outcome++) gained -= plain(mass[outcome]!);
    return Math.max(0, gained / total);
  };
}

function plain(weight: number): number {
  return weight > 0 ? weight * Math.log2(weight) : 0;
}
