import { batchGreedy } from "./batch.ts";
import { exact } from "./exact.ts";
import { costAfter, greedy, type Scored } from "./greedy.ts";
import { type Tells, tellsOf } from "./information.ts";
import {
  after,
  allLiving,
  isNeverDearer,
  isOneRepair,
  type Living,
  massOf,
  type Problem,
  parted,
  START,
  type Stand,
} from "./problem.ts";
import { type Choice, rollout } from "./rollout.ts";

/** Chooses the next probe for those that live. */
export type Chooser = (living: Living, stand: Stand) => Choice | null;

/** The planner: the optimum where it can be worked out, else rollout over the better of the greedy policies. */
export function planner(
  problem: Problem,
  tells: Tells = tellsOf(problem),
  pool: readonly number[] = distinct(problem),
): Chooser {
  return (living, stand) => {
    const best = exact(problem, tells, living, stand, pool);
    return best === undefined ? rollout(problem, tells, living, stand, pool) : best;
  };
}

/** The greedy policies as choosers, to compare with. */
export function greedyPlanner(problem: Problem, base: "single" | "batch" = "single"): Chooser {
  const tells = tellsOf(problem);
  const pool = distinct(problem);
  const policy = base === "single" ? greedy(problem, tells) : batchGreedy(problem, tells);
  return (living, stand) => {
    const first = policy(living, stand, pool);
    return first && { ...first, expected: expectedOf(problem, policy, living, stand, pool, first) };
  };
}

function expectedOf(
  problem: Problem,
  policy: Parameters<typeof costAfter>[1],
  living: Living,
  stand: Stand,
  pool: readonly number[],
  first: Scored,
): number {
  return first.minutes + costAfter(problem, policy, living, stand, pool, first.probe) / massOf(problem, living);
}

/**
 * Minutes that are expected when a chooser is asked again after every outcome, until one repair is left or it has nothing
 * to offer.
 */
export function minutesExpected(problem: Problem, choose: Chooser, stand: Stand = START): number {
  const walk = (living: Living, at: Stand): number => {
    if (living.length < 2 || isOneRepair(problem, living)) return 0;
    const next = choose(living, at);
    if (!next) return 0;
    const choice = problem.probes[next.probe]!;
    const then = after(at, choice);
    return parted(living, choice.classes).reduce(
      (sum, part) => sum + walk(part, then),
      next.minutes * massOf(problem, living),
    );
  };
  const living = allLiving(problem);
  return walk(living, stand) / massOf(problem, living);
}

/** Probes by number, all or some, without those that part the suspects as another does that is never dearer. */
export function distinct(
  { probes }: Problem,
  some: readonly number[] = probes.map((_, number) => number),
): readonly number[] {
  const kept = new Map<number, { readonly number: number; readonly parts: Uint8Array }[]>();
  const numbers: number[] = [];
  for (const number of some) {
    const probe = probes[number]!;
    const parts = renumbered(probe.classes);
    if (!parts) continue;
    const key = hashOf(parts);
    const same = kept.get(key) ?? [];
    kept.set(key, same);
    const isNeedless = same.some((other) => isNeverDearer(probes[other.number]!, probe) && isSame(other.parts, parts));
    if (isNeedless) continue;
    same.push({ number, parts });
    numbers.push(number);
  }
  return numbers;
}

/** Classes numbered in the order they first come up, so that the same parting is the same numbers; null where nothing is parted. */
function renumbered(classes: Uint8Array): Uint8Array | null {
  const numbers = new Int16Array(256).fill(-1);
  const parts = new Uint8Array(classes.length);
  let count = 0;
  for (let at = 0; at < classes.length; at++) {
    const each = classes[at]!;
    if (numbers[each]! < 0) numbers[each] = count++;
    parts[at] = numbers[each]!;
  }
  return count < 2 ? null : parts;
}

/** A number that is the same for the same parting (Fowler, Noll and Vo, FNV-1a, 32 bits). */
function hashOf(parts: Uint8Array): number {
  let hash = 0x811c9dc5;
  for (let at = 0; at < parts.length; at++) hash = Math.imul(hash ^ parts[at]!, 0x01000193);
  return hash;
}

function isSame(one: Uint8Array, other: Uint8Array): boolean {
  for (let at = 0; at < one.length; at++) if (one[at] !== other[at]) return false;
  return true;
}
