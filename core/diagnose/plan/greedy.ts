import type { Minutes } from "../../base/units.ts";
import type { Tells } from "./information.ts";
import { after, isOneRepair, type Living, massOf, minutesFrom, type Problem, parted, type Stand } from "./problem.ts";

/** A probe that tells less than this many bits tells nothing: rounding, not news. */
export const LEAST_BITS = 1e-9;

/** A probe of a problem with what it tells and costs from where things stand. */
export interface Scored {
  /** Number of the probe. */
  readonly probe: number;
  readonly bits: number;
  readonly minutes: Minutes;
  /** Bits a minute. */
  readonly score: number;
}

/** A way to choose the next probe out of some; null where none tells anything. */
export type Policy = (living: Living, stand: Stand, pool: readonly number[]) => Chosen | null;

/** The probe a policy takes, and those of its pool that tell anything at all: no other tells more to fewer suspects. */
export interface Chosen extends Scored {
  readonly telling: readonly number[];
}

/** Every probe of a pool that tells something, in the pool's order. */
export function scored(
  problem: Problem,
  tells: Tells,
  living: Living,
  stand: Stand,
  pool: readonly number[],
): readonly Scored[] {
  const found: Scored[] = [];
  for (const probe of pool) {
    const each = scoreOf(problem, tells, living, stand, probe);
    if (each) found.push(each);
  }
  return found;
}

function scoreOf(problem: Problem, tells: Tells, living: Living, stand: Stand, probe: number): Scored | null {
  const choice = problem.probes[probe]!;
  const bits = tells.probe(living, probe);
  if (bits < LEAST_BITS) return null;
  const minutes = minutesFrom(problem, choice, stand);
  return { probe, bits, minutes, score: bits / minutes };
}

/** The greedy policy: most bits for each further minute; the first of equals. */
export function greedy(problem: Problem, tells: Tells): Policy {
  return (living, stand, pool) => {
    if (living.length === 2) return cheapest(problem, tells, living, stand, pool);
    let best: Scored | null = null;
    const telling: number[] = [];
    for (const probe of pool) {
      const each = scoreOf(problem, tells, living, stand, probe);
      if (!each) continue;
      telling.push(probe);
      if (!best || each.score > best.score) best = each;
    }
    return best && { ...best, telling };
  };
}

/** Of two suspects any probe that parts them tells all there is: the cheapest is next. */
export function cheapest(
  problem: Problem,
  tells: Tells,
  living: Living,
  stand: Stand,
  pool: readonly number[],
): Chosen | null {
  const [one, other] = living as unknown as [number, number];
  let best = -1;
  let least = Number.POSITIVE_INFINITY;
  for (const probe of pool) {
    const choice = problem.probes[probe]!;
    if (choice.classes[one] === choice.classes[other]) continue;
    const minutes = minutesFrom(problem, choice, stand);
    if (minutes < least) [best, least] = [probe, minutes];
  }
  if (best < 0) return null;
  const bits = tells.probe(living, best);
  return { probe: best, bits, minutes: least, score: bits / least, telling: [best] };
}

/** Share of all weight below which a branch of the tree is not followed any further. */
const NEGLIGIBLE = 0.001;

/** How far the walk of a policy goes. */
export interface Walk {
  /** Branches lighter than a thousandth of this weight are taken as free; 0 follows every one. */
  readonly whole?: number;
  /** What it may cost: beyond that it is given up, and what is given back is only more than this. */
  readonly limit?: number;
}

/** Weight times minutes that a policy is expected to need from here until one repair is left or nothing tells more. */
export function costOf(
  problem: Problem,
  policy: Policy,
  living: Living,
  stand: Stand,
  pool: readonly number[],
  { whole = 0, limit = Number.POSITIVE_INFINITY }: Walk = {},
): number {
  if (living.length < 2 || isOneRepair(problem, living)) return 0;
  const mass = massOf(problem, living);
  if (mass < NEGLIGIBLE * whole) return 0;
  const next = policy(living, stand, pool);
  if (!next) return 0;
  const own = next.minutes * mass;
  if (own > limit) return own;
  return own + costAfter(problem, policy, living, stand, next.telling, next.probe, { whole, limit: limit - own });
}

/** The same once a given probe is taken, without that probe's own minutes. */
export function costAfter(
  problem: Problem,
  policy: Policy,
  living: Living,
  stand: Stand,
  pool: readonly number[],
  probe: number,
  { whole = 0, limit = Number.POSITIVE_INFINITY }: Walk = {},
): number {
  const choice = problem.probes[probe]!;
  const then = after(stand, choice);
  let cost = 0;
  for (const part of parted(living, choice.classes)) {
    cost += costOf(problem, policy, part, then, pool, { whole, limit: limit - cost });
    if (cost > limit) return cost;
  }
  return cost;
}
