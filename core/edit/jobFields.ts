import { type Refusal, refuse } from "../base/outcome.ts";
import { JOB_TEXTS } from "../base/words/job.ts";
import { HAPPENS, type Happens } from "../diagnose/comesAndGoes.ts";
import { CIRCUMSTANCES, type Circumstance, JOB_LIMITS, type JobFacts } from "../diagnose/job.ts";

/** Refuses `job-text` where a text of a job is too long; null where all fit. */
export function jobTextRefusal(facts: Partial<JobFacts>): Refusal | null {
  for (const field of ["vehicle", "told", "done"] as const) {
    const { length } = facts[field] ?? "";
    const most = JOB_LIMITS[field];
    if (length > most) return refuse("job-text", { what: JOB_TEXTS[field], most, length }).refusal;
  }
  return null;
}

/** Those of a job's circumstances that bring a fault on which comes and goes: the two lists say the same. */
export function happensIn(when: readonly Circumstance[]): readonly Happens[] {
  return HAPPENS.filter((each) => when.includes(each));
}

/** A job's circumstances with one of them so or not. */
export function whenWith(when: readonly Circumstance[], one: Circumstance, isSo: boolean): readonly Circumstance[] {
  return CIRCUMSTANCES.filter((each) => (each === one ? isSo : when.includes(each)));
}
