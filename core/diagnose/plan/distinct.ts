import { isNeverDearer, type Problem } from "./problem.ts";
import { type Table, tableOf } from "./table.ts";

/** Probes by number, all or some, without those that part the suspects as another does that is never dearer. */
export function distinct(
  problem: Problem,
  some: readonly number[] = problem.probes.map((_, number) => number),
): readonly number[] {
  const { probes } = problem;
  const table = renumbered(tableOf(problem));
  const kept = new Map<number, number[]>();
  const numbers: number[] = [];
  for (const number of some) {
    // Nothing is parted where all show what most show.
    if (table.start[number] === table.start[number + 1]) continue;
    const key = hashOf(table, number);
    const same = kept.get(key) ?? [];
    kept.set(key, same);
    if (same.some((other) => isNeverDearer(probes[other]!, probes[number]!) && isSame(table, other, number))) continue;
    same.push(number);
    numbers.push(number);
  }
  return numbers;
}

/** Classes numbered in the order they come up in their probe, so that the same parting is the same numbers. */
function renumbered({ start, suspect, outcome }: Table): Table {
  const numbers = new Int16Array(256).fill(-1);
  const renamed = new Uint8Array(outcome.length);
  for (let probe = 0; probe + 1 < start.length; probe++) {
    const [from, to] = [start[probe]!, start[probe + 1]!];
    let count = 0;
    for (let at = from; at < to; at++) {
      const each = outcome[at]!;
      if (numbers[each]! < 0) numbers[each] = count++;
      renamed[at] = numbers[each]!;
    }
    for (let at = from; at < to; at++) numbers[outcome[at]!] = -1;
  }
  return { start, suspect, outcome: renamed };
}

/** A number that is the same for the same parting (Fowler, Noll and Vo, FNV-1a, 32 bits). */
function hashOf({ start, suspect, outcome }: Table, probe: number): number {
  let hash = 0x811c9dc5;
  for (let at = start[probe]!; at < start[probe + 1]!; at++)
    hash = Math.imul(hash ^ (suspect[at]! | (outcome[at]! << 16)), 0x01000193);
  return hash;
}

function isSame({ start, suspect, outcome }: Table, one: number, other: number): boolean {
  const length = start[one + 1]! - start[one]!;
  if (length !== start[other + 1]! - start[other]!) return false;
  for (let at = 0, a = start[one]!, b = start[other]!; at < length; at++, a++, b++)
    if (suspect[a] !== suspect[b] || outcome[a] !== outcome[b]) return false;
  return true;
}
