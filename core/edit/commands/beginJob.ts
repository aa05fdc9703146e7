import { type Outcome, refuse } from "../../base/outcome.ts";
import { JOB_NAMES } from "../../base/words/job.ts";
import { type Job, type JobFacts, jobAbout } from "../../diagnose/job.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { editOf } from "../editOf.ts";
import { jobTextRefusal } from "../jobFields.ts";

/**
 * Begins a job under an id of its own, with what is said of it; what was noted on the bench before belongs to it. Refuses
 * `job-open` where one is in hand, and `job-text`.
 */
export function beginJob(bench: Bench, id: Job["id"], facts: Partial<JobFacts> = {}): Outcome<Edit> {
  if (bench.job) return refuse("job-open");
  const refusal = jobTextRefusal(facts);
  if (refusal) return { ok: false, refusal };
  const value = { ...jobAbout(id), ...facts };
  return editOf(bench, JOB_NAMES.beginJob(value.vehicle), [{ change: "bench", field: "job", value }]);
}
