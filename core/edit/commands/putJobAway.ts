import { type Outcome, refuse } from "../../base/outcome.ts";
import { JOB_NAMES } from "../../base/words/job.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { editOf } from "../editOf.ts";

/** Puts the job in hand away: complaint, checks, readings and battery volts go with it. Refuses `job-none`. */
export function putJobAway(bench: Bench): Outcome<Edit> {
  if (!bench.job) return refuse("job-none");
  return editOf(bench, JOB_NAMES.putJobAway(bench.job.vehicle), [
    { change: "bench", field: "complaint", value: null },
    { change: "bench", field: "observed", value: {} },
    { change: "bench", field: "readings", value: [] },
    { change: "bench", field: "batteryVolts", value: null },
    { change: "bench", field: "sleepingAmps", value: null },
    { change: "bench", field: "when", value: [] },
    { change: "bench", field: "wiggled", value: [] },
    { change: "bench", field: "job", value: null },
  ]);
}
