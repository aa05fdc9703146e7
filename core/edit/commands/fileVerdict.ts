import { type Outcome, refuse } from "../../base/outcome.ts";
import { JOB_NAMES } from "../../base/words/job.ts";
import type { FiledVerdict } from "../../diagnose/job.ts";
import { parseFault } from "../../live/fault.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";

/**
 * Files what the job's cause is taken to be, whatever the readings say, or with null takes the verdict back. Refuses
 * `job-none`, `already-so`, and `verdict-unknown` for what the circuit cannot suffer.
 */
export function fileVerdict(bench: Bench, verdict: FiledVerdict | null): Outcome<Edit> {
  const { job, circuit } = bench;
  if (!job) return refuse("job-none");
  if (verdict?.suspect === job.verdict?.suspect) return alreadySo("The verdict");
  if (verdict && !verdict.suspect.split("+").every((fault) => parseFault(circuit, fault).ok))
    return refuse("verdict-unknown", { suspect: verdict.suspect });
  const name = verdict ? JOB_NAMES.fileVerdict(verdict.suspect) : JOB_NAMES.dropVerdict;
  return editOf(bench, name, [{ change: "bench", field: "job", value: { ...job, verdict } }]);
}
