import type { Living, Problem } from "./problem.ts";
import { tableOf } from "./table.ts";

const MOST_CLASSES = 256;

/**
 * Bits that a probe is expected to tell about the repair: the entropy over repairs of the living, less what is expected
 * to be left of it once they are parted by what it shows. Suspects of one repair need not be parted.
 */
export interface Tells {
  /** Of a probe of the problem, by number. */
  probe(living: Living, probe: number): number;
  /** Of any parting: one class a suspect. */
  classes(living: Living, classes: Uint8Array): number;
}

/**
 * The measure of information for a problem. It keeps its sums between calls, so that a sweep makes nothing new, and what
 * it knows of the living for as long as it is asked about the same ones.
 */
export function tellsOf(problem: Problem): Tells {
  const table = tableOf(problem);
  const scales = scalesOf(problem);
  const apart = apartOf(problem);
  return {
    classes: scales,
    probe(living, probe) {
      const [start, end] = [table.start[probe]!, table.start[probe + 1]!];
      // Whichever is the shorter way: through the living, or through those that show something else than most.
      if (end - start >= living.length) return scales(living, problem.probes[probe]!.classes);
      return apart(living, table.suspect, table.outcome, start, end);
    },
  };
}

// ---------------------------------------------------------------- through the living

/** Weighs the living one by one; where one repair ends and the next begins is kept. */
function scalesOf({ weights, repairs }: Problem): Tells["classes"] {
  const mass = new Float64Array(MOST_CLASSES);
  const inRepair = new Float64Array(MOST_CLASSES);
  const ends = new Uint16Array(weights.length);
  const wholes = new Float64Array(weights.length);
  let last: Living | null = null;
  let groups = 0;
  let total = 0;

  const look = (living: Living): void => {
    last = living;
    groups = 0;
    total = 0;
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

// ---------------------------------------------------------------- through those apart

/** Weighs only those that show something else than most do; what is left of the whole are the others. */
function apartOf({ weights, repairs }: Problem) {
  const repairCount = repairs.reduce((most, repair) => Math.max(most, repair + 1), 0);
  const mass = new Float64Array(MOST_CLASSES);
  const inRepair = new Float64Array(MOST_CLASSES);
  const isLiving = new Uint8Array(weights.length);
  /** Of each repair: living suspects, their weight, and that weight times its logarithm. */
  const size = new Uint16Array(repairCount);
  const whole = new Float64Array(repairCount);
  const wholes = new Float64Array(repairCount);
  /** What is gained where a suspect stands apart from all others of its repair. */
  const alone = new Float64Array(weights.length);
  let last: Living | null = null;
  let total = 0;

  const look = (living: Living): void => {
    isLiving.fill(0);
    size.fill(0);
    whole.fill(0);
    total = 0;
    for (const each of living) {
      const repair = repairs[each]!;
      isLiving[each] = 1;
      size[repair]!++;
      whole[repair]! += weights[each]!;
      total += weights[each]!;
    }
    for (const each of living) {
      const repair = repairs[each]!;
      wholes[repair] = plain(whole[repair]!);
      const own = weights[each]!;
      alone[each] = size[repair] === 1 ? 0 : plain(own) + plain(whole[repair]! - own) - wholes[repair]!;
    }
    last = living;
  };

  /** Several of one repair stand apart, from `start` on: adds their weight to their classes, tells what is gained. */
  const several = (suspect: Uint16Array, outcome: Uint8Array, start: number, end: number): number => {
    const repair = repairs[suspect[start]!]!;
    let rest = whole[repair]!;
    let count = 0;
    for (let at = start; at < end; at++) {
      const each = suspect[at]!;
      if (isLiving[each] === 0) continue;
      inRepair[outcome[at]!]! += weights[each]!;
      rest -= weights[each]!;
      count++;
    }
    const isAll = count === size[repair];
    let gained = isAll ? 0 : plain(rest);
    let parts = isAll ? 0 : 1;
    for (let at = start; at < end; at++) {
      const part = inRepair[outcome[at]!]!;
      if (part === 0) continue;
      gained += plain(part);
      mass[outcome[at]!]! += part;
      inRepair[outcome[at]!] = 0;
      parts++;
    }
    return parts < 2 ? 0 : gained - wholes[repair]!;
  };

  return (living: Living, suspect: Uint16Array, outcome: Uint8Array, start: number, end: number): number => {
    if (living !== last) look(living);
    if (total <= 0) return 0;
    let gained = 0;
    let used = 0;
    let count = 0;
    for (let at = start; at < end; ) {
      const each = suspect[at]!;
      if (isLiving[each] === 0) {
        at++;
        continue;
      }
      const repair = repairs[each]!;
      let own = 1;
      let next = at + 1;
      for (; next < end && repairs[suspect[next]!] === repair; next++) own += isLiving[suspect[next]!]!;
      if (own === 1) {
        gained += alone[each]!;
        mass[outcome[at]!]! += weights[each]!;
      } else gained += several(suspect, outcome, at, next);
      for (; at < next; at++) if (outcome[at]! >= used) used = outcome[at]! + 1;
      count += own;
    }
    let rest = total;
    let after = 0;
    let outcomes = 0;
    for (let each = 0; each < used; each++) {
      const part = mass[each]!;
      if (part === 0) continue;
      after += plain(part);
      rest -= part;
      outcomes++;
      mass[each] = 0;
    }
    if (count < living.length) {
      after += plain(rest);
      outcomes++;
    }
    return outcomes < 2 ? 0 : Math.max(0, (gained + plain(total) - after) / total);
  };
}

function plain(weight: number): number {
  return weight > 0 ? weight * Math.log2(weight) : 0;
}
