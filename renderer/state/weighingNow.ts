import { remember } from "../../core/base/memo.ts";
import type { Weighing, WeightFactor } from "../../core/diagnose/weighing.ts";
import type { JobRow } from "../../schemas/calls.ts";
import type { Settings } from "../../schemas/settings.ts";
import type { Open } from "./state.ts";

/** What changes the starting weights on the open bench: its own factors, the shop's, and what was found in other jobs. */
export function weighingNow({ desk, jobs }: Pick<Open, "desk" | "jobs">, { shop }: Pick<Settings, "shop">): Weighing {
  const { weights, job } = desk.bench;
  return { circuit: weights, shop, solved: jobs === null ? [] : verdictsBut(jobs, job?.id ?? null) };
}

/** Verdicts of the jobs that are done, but that of the job in hand: nothing proves itself. */
function verdictsBut(jobs: readonly JobRow[], inHand: string | null): readonly string[] {
  return solvedIn(jobs).flatMap(({ id, suspect }) => (id === inHand || suspect === null ? [] : [suspect]));
}

const solvedIn = remember((jobs: readonly JobRow[]) => jobs.filter(({ isSolved }) => isSolved));

/** The factor that is set for something; null where it weighs as guessed. */
export function factorFor(factors: readonly WeightFactor[], of: string): WeightFactor | null {
  return factors.find((each) => each.of === of) ?? null;
}
