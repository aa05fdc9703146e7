import type { Minutes, Share } from "../base/units.ts";
import { minutesFrom } from "../diagnose/plan/problem.ts";
import type { Ground } from "./ground.ts";
import type { Standing } from "./moveMinutes.ts";
import { rowText } from "./rowText.ts";
import { type Evident, sightOf, standFor } from "./sight.ts";

/** What other suspects may keep together beside a verdict that is proven. */
export const MOST_OTHERS: Share = 0.2;

/** A row that was not read and would have proved the verdict, or most of it. */
export interface Missing {
  /** As it would have been typed. */
  readonly row: string;
  /** The likeliest suspect that it would have told from the verdict, in words. */
  readonly other: string;
  readonly minutes: Minutes;
}

/** How far readings prove a verdict. */
export interface Proof {
  /** "as far as can be": what is left reads like the verdict at every place that may be read. */
  readonly is: "proven" | "as far as can be" | "not proven";
  /** Share of all that is mended otherwise, and of what is not on the drawing. */
  readonly others: Share;
  /** The reading that was missing; null where it is proven. */
  readonly missing: Missing | null;
}

/** How far evidence proves that this suspect's repair is the right one. */
export function proofOf(ground: Ground, evident: Evident, now: Standing, suspect: number): Proof {
  const { rows, pool } = ground;
  const { problem } = sightOf(ground, evident);
  const { weights, repairs, probes } = problem;
  const rivals = [...weights.keys()].filter((each) => repairs[each] !== repairs[suspect]);
  const own = [...weights.keys()].reduce(
    (sum, each) => (repairs[each] === repairs[suspect] ? sum + weights[each]! : sum),
    0,
  );
  const others = 1 - own;
  if (others <= MOST_OTHERS) return { is: "proven", others, missing: null };
  const tellsApart = (row: number): readonly number[] =>
    rivals.filter((each) => probes[row]!.classes[each] !== probes[row]!.classes[suspect]);
  const massOf = (some: readonly number[]): Share => some.reduce((sum, each) => sum + weights[each]!, 0);
  const told = new Set(pool.flatMap(tellsApart));
  const untold = massOf(rivals.filter((each) => !told.has(each)));
  if (others - untold <= MOST_OTHERS) return { is: "as far as can be", others, missing: null };
  const stand = standFor(ground, now);
  const ranked = pool
    .map((row) => ({ row, mass: massOf(tellsApart(row)), minutes: minutesFrom(rows.problem, probes[row]!, stand) }))
    .sort((one, other) => other.mass - one.mass || one.minutes - other.minutes);
  const { row, minutes } = ranked[0]!;
  const other = [...tellsApart(row)].sort((one, two) => weights[two]! - weights[one]!)[0]!;
  const { title } = ground.suspects[other]!;
  return { is: "not proven", others, missing: { row: rowText(ground, row), other: title, minutes } };
}
