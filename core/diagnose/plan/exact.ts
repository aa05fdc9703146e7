import { LEAST_BITS } from "./greedy.ts";
import type { Tells } from "./information.ts";
import { after, isNeverDearer, type Living, minutesFrom, type Problem, parted, type Stand } from "./problem.ts";
import type { Choice } from "./rollout.ts";

/** Suspects that can be told apart, up to which the optimum is worked out. */
export const MOST_EXACT = 14;
/** States looked at before the optimum is given up: trim and ways make many. */
const MOST_STATES = 60_000;

/**
 * The best next probe by dynamic programming over sets of suspects, or undefined where there are more than 14 that probes
 * can tell apart, or too many states; null where no probe tells anything. Suspects that every probe shows alike are one.
 */
export function exact(
  problem: Problem,
  tells: Tells,
  living: Living,
  stand: Stand,
  pool: readonly number[],
): Choice | null | undefined {
  const atoms = alike(problem, living, pool);
  if (atoms.length > MOST_EXACT) return undefined;
  const best = new Optimum(problem, atoms, pool).from((1 << atoms.length) - 1, stand);
  if (best === undefined) return undefined;
  if (best.probe === -1) return null;
  const choice = problem.probes[best.probe]!;
  const bits = tells.probe(living, best.probe);
  const minutes = minutesFrom(problem, choice, stand);
  const mass = atoms.reduce((sum, atom) => sum + atom.mass, 0);
  return { probe: best.probe, bits, minutes, score: bits / minutes, expected: best.cost / mass };
}

interface Atom {
  /** A suspect that stands for all that read alike. */
  readonly one: number;
  readonly mass: number;
  /** The repair that mends it; a number of its own where there are several. */
  readonly repair: number;
}

function alike(problem: Problem, living: Living, pool: readonly number[]): readonly Atom[] {
  let sets: readonly Living[] = [living];
  for (const probe of pool) {
    // More than can be worked out: who is alike need not be known.
    if (sets.length === living.length || sets.length > MOST_EXACT) break;
    const { classes } = problem.probes[probe]!;
    sets = sets.flatMap((set) => (set.length === 1 ? [set] : parted(set, classes)));
  }
  return sets.map((set, index) => {
    const repairs = new Set([...set].map((each) => problem.repairs[each]!));
    return {
      one: set[0]!,
      mass: set.reduce((sum, each) => sum + problem.weights[each]!, 0),
      repair: repairs.size === 1 ? [...repairs][0]! : -1 - index,
    };
  });
}

interface Best {
  /** Weight times minutes, and the probe to take; -1 where nothing is to be taken. */
  readonly cost: number;
  readonly probe: number;
}

const DONE: Best = { cost: 0, probe: -1 };

class Optimum {
  private readonly known = new Map<string, Best>();
  private readonly problem: Problem;
  private readonly atoms: readonly Atom[];
  /** Probes that part the atoms, each with its outcomes as bit sets of atoms; of those that part alike the cheaper stand first. */
  private readonly splits: readonly { readonly probe: number; readonly outcomes: readonly number[] }[];

  constructor(problem: Problem, atoms: readonly Atom[], pool: readonly number[]) {
    this.problem = problem;
    this.atoms = atoms;
    const kept: { probe: number; outcomes: readonly number[]; key: string }[] = [];
    for (const probe of pool) {
      const outcomes = this.outcomesOf(probe);
      if (outcomes.length < 2) continue;
      const key = [...outcomes].sort((one, other) => one - other).join();
      if (
        kept.some((other) => other.key === key && isNeverDearer(problem.probes[other.probe]!, problem.probes[probe]!))
      )
        continue;
      kept.push({ probe, outcomes, key });
    }
    this.splits = kept;
  }

  private outcomesOf(probe: number): readonly number[] {
    const { classes } = this.problem.probes[probe]!;
    const sets = new Map<number, number>();
    this.atoms.forEach(({ one }, index) => {
      sets.set(classes[one]!, (sets.get(classes[one]!) ?? 0) | (1 << index));
    });
    return [...sets.values()];
  }

  /** The least that is expected from a set of atoms; undefined where there are too many states. */
  from(set: number, stand: Stand): Best | undefined {
    if (this.isOne(set)) return DONE;
    const key = `${set},${stand.open},${stand.place},${stand.mode}`;
    const known = this.known.get(key);
    if (known) return known;
    if (this.known.size >= MOST_STATES) return undefined;
    const mass = this.massOf(set);
    let best: Best | null = null;
    for (const { probe, outcomes } of this.splits) {
      if (outcomes.some((outcome) => (outcome & set) === set)) continue;
      const choice = this.problem.probes[probe]!;
      let cost = mass * minutesFrom(this.problem, choice, stand);
      const then = after(stand, choice);
      for (const outcome of outcomes) {
        if (best && cost >= best.cost) break;
        if ((outcome & set) === 0) continue;
        const rest = this.from(outcome & set, then);
        if (!rest) return undefined;
        cost += rest.cost;
      }
      if (!best || cost < best.cost - LEAST_BITS) best = { cost, probe };
    }
    const found = best ?? DONE;
    this.known.set(key, found);
    return found;
  }

  private isOne(set: number): boolean {
    const first = this.atoms[31 - Math.clz32(set & -set)]!.repair;
    return this.atoms.every(({ repair }, index) => (set & (1 << index)) === 0 || repair === first);
  }

  private massOf(set: number): number {
    return this.atoms.reduce((sum, { mass }, index) => ((set & (1 << index)) === 0 ? sum : sum + mass), 0);
  }
}
