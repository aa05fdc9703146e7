import { cheapest, LEAST_BITS, type Policy, type Scored } from "./greedy.ts";
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
  const joined = joiner();
  return (living, stand, pool) => {
    if (living.length === 2) return cheapest(problem, tells, living, stand, pool);
    const telling: number[] = [];
    const bits: number[] = [];
    const byTrim = new Map<number, number[]>();
    for (const probe of pool) {
      const { trim } = problem.probes[probe]!;
      const told = tells.probe(living, probe);
      if (told < LEAST_BITS) continue;
      const at = telling.push(probe) - 1;
      bits.push(told);
      const shut = trim & ~stand.open;
      const others = byTrim.get(shut);
      if (others) others.push(at);
      else byTrim.set(shut, [at]);
    }
    let best: Scored | null = null;
    for (const [shut, own] of byTrim) {
      const most = shut === 0 ? 1 : MOST_TOGETHER;
      const found = bestOf(problem, tells, joined, living, stand, telling, bits, own, most);
      if (found && (!best || found.score > best.score)) best = found;
    }
    return best && { ...best, telling };
  };
}

/** Makes the classes of two probes read together, numbered anew for the living; null where they are too many to number. */
type Joiner = (living: Living, one: Uint8Array, other: Uint8Array, into: Uint8Array) => boolean;

function joiner(): Joiner {
  const numbers = new Int16Array(MOST_CLASSES * MOST_CLASSES).fill(-1);
  const used: number[] = [];
  return (living, one, other, into) => {
    let count = 0;
    let fits = true;
    for (const each of living) {
      const pair = one[each]! * MOST_CLASSES + other[each]!;
      let number = numbers[pair]!;
      if (number < 0) {
        if (count === MOST_CLASSES) {
          fits = false;
          break;
        }
        number = count++;
        numbers[pair] = number;
        used.push(pair);
      }
      into[each] = number;
    }
    for (const pair of used) numbers[pair] = -1;
    used.length = 0;
    return fits;
  };
}

/** Of the probes behind one shut trim the first of the best batch: each time the one is added with which it scores best. */
function bestOf(
  problem: Problem,
  tells: Tells,
  joined: Joiner,
  living: Living,
  start: Stand,
  telling: readonly number[],
  bits: readonly number[],
  own: readonly number[],
  most: number,
): Scored | null {
  let best: Scored | null = null;
  let first = -1;
  let [together, minutes, stand] = [0, 0, start];
  let batch = new Uint8Array(problem.weights.length);
  let tried = new Uint8Array(problem.weights.length);
  for (let size = 1; size <= most; size++) {
    let [next, nextBits, nextMinutes] = [-1, 0, 0];
    for (const at of own) {
      const choice = problem.probes[telling[at]!]!;
      const spent = minutes + minutesFrom(problem, choice, stand);
      // As a rule a batch tells no more than its probes do one by one: what cannot win even so is not joined.
      if (next >= 0 && (together + bits[at]!) / spent <= nextBits / nextMinutes) continue;
      if (size > 1 && !joined(living, batch, choice.classes, tried)) continue;
      const told = size === 1 ? bits[at]! : tells.classes(living, tried);
      if (told > together + LEAST_BITS && (next < 0 || told / spent > nextBits / nextMinutes))
        [next, nextBits, nextMinutes] = [at, told, spent];
    }
    if (next < 0) break;
    if (first < 0) first = next;
    const choice = problem.probes[telling[next]!]!;
    const score = nextBits / nextMinutes;
    if (!best || score > best.score) {
      const probe = telling[first]!;
      best = { probe, bits: bits[first]!, minutes: minutesFrom(problem, problem.probes[probe]!, start), score };
    }
    if (size === 1) batch.set(choice.classes);
    else {
      joined(living, batch, choice.classes, tried);
      [batch, tried] = [tried, batch];
    }
    [together, minutes, stand] = [nextBits, nextMinutes, after(stand, choice)];
  }
  return best;
}
