import { remember } from "../base/memo.ts";
import type { Minutes, Share } from "../base/units.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { suspicion } from "../diagnose/order.ts";
import { batchGreedy } from "../diagnose/plan/batch.ts";
import { distinct } from "../diagnose/plan/distinct.ts";
import { tellsOf } from "../diagnose/plan/information.ts";
import { planner } from "../diagnose/plan/next.ts";
import {
  after,
  allLiving,
  isOneRepair,
  type Living,
  minutesFrom,
  parted,
  START,
  type Stand,
} from "../diagnose/plan/problem.ts";
import { type Rows, rowsFor } from "../diagnose/rows.ts";
import type { Instrument, Suspect } from "../diagnose/step.ts";
import type { Observation } from "../diagnose/suspects.ts";
import { triesFor } from "../diagnose/tries.ts";

/** Share that other suspects may keep beside a verdict that is proven. */
export const MOST_OTHERS: Share = 0.2;

/** A complaint as a learner meets it, nothing read yet: who is suspected, and the rows that the allowed instruments can read. */
export interface Ground {
  readonly circuit: Circuit;
  readonly complaint: Observation;
  readonly suspects: readonly Suspect[];
  readonly rows: Rows;
  /** Numbers of the rows that may be read. */
  readonly allowed: readonly number[];
  /** The same without those that part the suspects as a cheaper one does. */
  readonly pool: readonly number[];
}

/** The ground of a complaint for some instruments; asked again, it is remembered with its circuit. */
export function groundFor(circuit: Circuit, complaint: Observation, instruments: readonly Instrument[]): Ground {
  const key = `${complaint.check.id} ${complaint.word} ${[...instruments].sort().join()}`;
  const known = groundsOf(circuit).get(key);
  if (known) return known;
  const { suspects } = suspicion(circuit, complaint, {});
  const rows = rowsFor(circuit, complaint.check.condition, suspects, triesFor(circuit, complaint.check), []);
  const allowed = [...rows.columns.keys()].filter((row) =>
    instruments.includes(rows.columns[row]!.candidate.instrument),
  );
  const ground = { circuit, complaint, suspects, rows, allowed, pool: distinct(rows.problem, allowed) };
  groundsOf(circuit).set(key, ground);
  return ground;
}

const groundsOf = remember((_: Circuit) => new Map<string, Ground>());

/** The suspect that stands for a fault: itself, else one that the same repair mends; -1 where none does. */
export function suspectFor({ suspects }: Ground, fault: { readonly id: string; readonly repair: string }): number {
  const itself = suspects.findIndex(({ id }) => id === fault.id);
  return itself >= 0 ? itself : suspects.findIndex(({ repairGroup }) => repairGroup === fault.repair);
}

/** Suspects of other repairs, by number, that show the same as this one in every row that may be read. */
export function alikeTo({ rows: { problem }, pool }: Ground, suspect: number): readonly number[] {
  const { repairs, probes } = problem;
  if (suspect < 0) return [];
  const isAlike = (other: number): boolean =>
    pool.every((row) => probes[row]!.classes[other] === probes[row]!.classes[suspect]);
  return [...repairs.keys()].filter((other) => repairs[other] !== repairs[suspect] && isAlike(other));
}

/** Whether allowed readings can prove a suspect at all: others that read like it keep no more than a proof may leave. */
export function canBeProven(ground: Ground, suspect: number): boolean {
  const { weights, repairs } = ground.rows.problem;
  const own = weights.reduce((sum, weight, each) => (repairs[each] === repairs[suspect] ? sum + weight : sum), 0);
  const alike = alikeTo(ground, suspect).reduce((sum, each) => sum + weights[each]!, 0);
  return alike <= MOST_OTHERS * (own + alike);
}

/** What the planner does on the way to one suspect: rows in order, and their minutes together. */
export interface Way {
  readonly rows: readonly number[];
  readonly minutes: Minutes;
}

/** The planner's way where this suspect is what is wrong, until one repair is left or no row tells more. */
export function wayTo({ rows: { problem }, pool }: Ground, suspect: number): Way {
  const choose = planner(problem, tellsOf(problem), pool);
  const rows: number[] = [];
  let minutes = 0;
  let living = allLiving(problem);
  let stand: Stand = START;
  while (!isOneRepair(problem, living)) {
    const next = choose(living, stand);
    if (!next) break;
    const choice = problem.probes[next.probe]!;
    rows.push(next.probe);
    minutes += minutesFrom(problem, choice, stand);
    living = parted(living, choice.classes).find((part) => part.includes(suspect))!;
    stand = after(stand, choice);
  }
  return { rows, minutes: Math.round(minutes * 100) / 100 };
}

/** Minutes to each suspect on the ways of the greedy planner, which looks behind the trim: within a tenth or so of the best. */
export function minutesToEach({ rows: { problem }, pool }: Ground): Float64Array {
  const policy = batchGreedy(problem, tellsOf(problem));
  const minutes = new Float64Array(problem.weights.length);
  const walk = (living: Living, stand: Stand, rows: readonly number[], spent: Minutes): void => {
    const next = isOneRepair(problem, living) ? null : policy(living, stand, rows);
    if (!next) {
      for (const suspect of living) minutes[suspect] = spent;
      return;
    }
    const choice = problem.probes[next.probe]!;
    const then = spent + minutesFrom(problem, choice, stand);
    for (const part of parted(living, choice.classes)) walk(part, after(stand, choice), next.telling, then);
  };
  walk(allLiving(problem), START, pool, 0);
  return minutes;
}
