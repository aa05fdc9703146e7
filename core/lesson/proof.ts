import type { Minutes, Share } from "../base/units.ts";
import { minutesFrom } from "../diagnose/plan/problem.ts";
import { type Ground, MOST_OTHERS } from "./ground.ts";
import { unread } from "./hint.ts";
import type { Standing } from "./moveMinutes.ts";
import { rowText } from "./rowText.ts";
import { type Evident, sightOf, standFor } from "./sight.ts";

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
  /** "as far as can be": nothing that may be read and was not would tell the verdict from what is left. */
  readonly is: "proven" | "as far as can be" | "not proven";
  /** Share of all that is mended otherwise, and of what is not on the drawing. */
  readonly others: Share;
  /** The reading that was missing; null where it is proven. */
  readonly missing: Missing | null;
}

/** How far evidence proves that this suspect's repair is the right one. */
export function proofOf(ground: Ground, evident: Evident, now: Standing, suspect: number): Proof {
  const { rows } = ground;
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
  const left = unread(ground, evident);
  const told = new Set(left.flatMap(tellsApart));
  const untold = massOf(rivals.filter((each) => !told.has(each)));
  if (others - untold <= MOST_OTHERS) return { is: "as far as can be", others, missing: null };
  const stand = standFor(ground, now);
  const ranked = left
    .map((row) => ({ row, mass: massOf(tellsApart(row)), minutes: minutesFrom(rows.problem, probes[row]!, stand) }))
    .sort((one, other) => other.mass - one.mass || one.minutes - other.minutes);
  const { row, minutes } = ranked[0]!;
  const other = [...tellsApart(row)].sort((one, two) => weights[two]! - weights[one]!)[0]!;
  const { title } = ground.suspects[other]!;
  return { is: "not proven", others, missing: { row: rowText(ground, row), other: title, minutes } };
}
