import type { Minutes } from "../../base/units.ts";
import { LEAST_BITS, type Policy, type Scored } from "./greedy.ts";
import type { Tells } from "./information.ts";
import { after, type Living, minutesFrom, type Problem, type Stand } from "./problem.ts";

/** Probes that are weighed together before trim comes off for them. */
const MOST_TOGETHER = 3;
const MOST_CLASSES = 256;

/**
 * The greedy policy that looks behind the trim: up to three probes behind the same shut trim are weighed as one, since the
 * trim comes off once for all of them. Where a batch is worth most, its first probe is next.
 */
export function batchGreedy(problem: Problem, tells: Tells): Policy {
  return (living, stand, pool) => {
    const byTrim = new Map<number, number[]>();
    for (const probe of pool) {
      const shut = problem.probes[probe]!.trim & ~stand.open;
      const others = byTrim.get(shut);
      if (others) others.push(probe);
      else byTrim.set(shut, [probe]);
    }
    let best: Scored | null = null;
    for (const [shut, probes] of byTrim) {
      const found = bestOf(problem, tells, living, stand, probes, shut === 0 ? 1 : MOST_TOGETHER);
      if (found && (!best || found.score > best.score)) best = found;
    }
    return best;
  };
}

interface Batch {
  readonly classes: Uint8Array;
  readonly bits: number;
  readonly minutes: Minutes;
  readonly stand: Stand;
}

function bestOf(
  problem: Problem,
  tells: Tells,
  living: Living,
  start: Stand,
  probes: readonly number[],
  most: number,
): Scored | null {
  let best: Scored | null = null;
  let first: { readonly probe: number; readonly bits: number; readonly minutes: Minutes } | null = null;
  let batch: Batch = { classes: new Uint8Array(problem.weights.length), bits: 0, minutes: 0, stand: start };
  for (let size = 1; size <= most; size++) {
    let grown: (Batch & { readonly probe: number }) | null = null;
    for (const probe of probes) {
      const choice = problem.probes[probe]!;
      const classes = size === 1 ? choice.classes : joined(living, batch.classes, choice.classes);
      if (!classes) continue;
      const bits = tells(living, classes);
      const minutes = batch.minutes + minutesFrom(problem, choice, batch.stand);
      if (bits > batch.bits + LEAST_BITS && (!grown || bits / minutes > grown.bits / grown.minutes))
        grown = { probe, classes, bits, minutes, stand: after(batch.stand, choice) };
    }
    if (!grown) break;
    first ??= grown;
    const score = grown.bits / grown.minutes;
    if (!best || score > best.score) best = { probe: first.probe, bits: first.bits, minutes: first.minutes, score };
    batch = grown;
  }
  return best;
}

/** Classes of two probes read together, numbered anew for the living; null where they are too many to number. */
function joined(living: Living, one: Uint8Array, other: Uint8Array): Uint8Array | null {
  const numbers = new Map<number, number>();
  const classes = new Uint8Array(one.length);
  for (const each of living) {
    const pair = one[each]! * MOST_CLASSES + other[each]!;
    let number = numbers.get(pair);
    if (number === undefined) {
      number = numbers.size;
      if (number === MOST_CLASSES) return null;
      numbers.set(pair, number);
    }
    classes[each] = number;
  }
  return classes;
}
