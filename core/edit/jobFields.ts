import { type Refusal, refuse } from "../base/outcome.ts";
import { JOB_TEXTS } from "../base/words/job.ts";
import { JOB_LIMITS, type JobFacts } from "../diagnose/job.ts";

/** Refuses `job-text` where a text of a job is too long; null where all fit. */
export function jobTextRefusal(facts: Partial<JobFacts>): Refusal | null {
  for (const field of ["vehicle", "told", "done"] as const) {
    const { length } = facts[field] ?? "";
    const most = JOB_LIMITS[field];
    if (length > most) return refuse("job-text", { what: JOB_TEXTS[field], most, length }).refusal;
  }
  return null;
}
