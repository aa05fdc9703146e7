/** Sets over which every choice is tried; beyond it the greedy cover stands. */
const MOST_EXACT = 16;

/**
 * The cheapest choice of sets that together hold all that any of them holds, by number; `cost` is of a whole choice and
 * never falls when a set is added. Greedy by gain per cost, then every choice is tried where few sets are left that no
 * other beats (set cover: V. Chvatal, "A greedy heuristic for the set-covering problem", 1979).
 */
export function cheapestCover(
  sets: readonly ReadonlySet<number>[],
  cost: (chosen: readonly number[]) => number,
): readonly number[] {
  const wanted = new Set(sets.flatMap((set) => [...set]));
  const pool = unbeaten(sets, cost);
  const greedy = greedyCover(sets, pool, wanted, cost);
  return pool.length > MOST_EXACT ? greedy : exactCover(sets, pool, wanted, cost, greedy);
}

/** Sets that hold something no other holds at the same cost or less; of equals the first. */
function unbeaten(
  sets: readonly ReadonlySet<number>[],
  cost: (chosen: readonly number[]) => number,
): readonly number[] {
  const alone = sets.map((_, index) => cost([index]));
  const holds = (one: number, other: number): boolean => [...sets[other]!].every((item) => sets[one]!.has(item));
  return sets.flatMap((set, index) => {
    const isBeaten = sets.some((other, at) => {
      if (at === index || !holds(at, index) || alone[at]! > alone[index]!) return false;
      return other.size > set.size || alone[at]! < alone[index]! || at < index;
    });
    return set.size === 0 || isBeaten ? [] : [index];
  });
}

function greedyCover(
  sets: readonly ReadonlySet<number>[],
  pool: readonly number[],
  wanted: ReadonlySet<number>,
  cost: (chosen: readonly number[]) => number,
): readonly number[] {
  const chosen: number[] = [];
  const left = new Set(wanted);
  while (left.size > 0) {
    const now = cost(chosen);
    let best = { index: -1, worth: 0 };
    for (const index of pool) {
      const gain = [...sets[index]!].filter((item) => left.has(item)).length;
      const worth = gain / Math.max(cost([...chosen, index]) - now, 1e-6);
      if (gain > 0 && worth > best.worth) best = { index, worth };
    }
    chosen.push(best.index);
    for (const item of sets[best.index]!) left.delete(item);
  }
  return chosen;
}

/** Tries, for the item that fewest sets hold, each of them in turn; what costs as much as the best so far is given up. */
function exactCover(
  sets: readonly ReadonlySet<number>[],
  pool: readonly number[],
  wanted: ReadonlySet<number>,
  cost: (chosen: readonly number[]) => number,
  first: readonly number[],
): readonly number[] {
  let best = { chosen: first, cost: cost(first) };
  const holders = new Map([...wanted].map((item) => [item, pool.filter((index) => sets[index]!.has(item))]));
  const rarest = [...wanted].sort((one, other) => holders.get(one)!.length - holders.get(other)!.length);
  const go = (chosen: readonly number[]): void => {
    const now = cost(chosen);
    if (now >= best.cost - 1e-9) return;
    const open = rarest.find((item) => !chosen.some((index) => sets[index]!.has(item)));
    if (open === undefined) best = { chosen, cost: now };
    else for (const index of holders.get(open)!) go([...chosen, index]);
  };
  go([]);
  return best.chosen;
}
