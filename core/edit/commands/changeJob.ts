import { type Outcome, refuse } from "../../base/outcome.ts";
import { JOB_NAMES } from "../../base/words/job.ts";
import type { JobFacts } from "../../diagnose/job.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";
import { jobTextRefusal } from "../jobFields.ts";

/** Changes what is said of the job in hand. Refuses `job-none`, `job-text` and `already-so`. */
export function changeJob(bench: Bench, facts: Partial<JobFacts>): Outcome<Edit> {
  if (!bench.job) return refuse("job-none");
  const refusal = jobTextRefusal(facts);
  if (refusal) return { ok: false, refusal };
  const value = { ...bench.job, ...facts };
  if (JSON.stringify(value) === JSON.stringify(bench.job)) return alreadySo("The job");
  return editOf(bench, JOB_NAMES.changeJob, [{ change: "bench", field: "job", value }]);
}
