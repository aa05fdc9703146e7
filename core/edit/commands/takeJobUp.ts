import type { Outcome } from "../../base/outcome.ts";
import { JOB_NAMES } from "../../base/words/job.ts";
import { checkFor } from "../../diagnose/drain.ts";
import type { Job } from "../../diagnose/job.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";
import { jobOf } from "../jobOf.ts";

/**
 * Takes a job up in place of all that is noted, in one step. Readings are facts and stay whole; a complaint or an observation
 * of a check that the circuit has no more is left out. Refuses `already-so` and `job-shape`.
 */
export function takeJobUp(bench: Bench, job: Job): Outcome<Edit> {
  const { complaint, observed, readings, batteryVolts, sleepingAmps = null, when, wiggled = [], ...about } = job;
  const checks = new Set(bench.circuit.checks.map(({ id }) => id));
  const fitting: Job = {
    ...job,
    complaint: checkFor(bench.circuit, complaint) ? complaint : null,
    observed: Object.fromEntries(Object.entries(observed).filter(([check]) => checks.has(check))),
  };
  const inHand = jobOf(bench);
  if (inHand?.id === job.id && JSON.stringify(inOrder(inHand)) === JSON.stringify(inOrder(fitting)))
    return alreadySo("This job");
  return editOf(bench, JOB_NAMES.takeJobUp(job.vehicle), [
    { change: "bench", field: "complaint", value: fitting.complaint },
    { change: "bench", field: "observed", value: fitting.observed },
    { change: "bench", field: "readings", value: readings },
    { change: "bench", field: "batteryVolts", value: batteryVolts },
    { change: "bench", field: "sleepingAmps", value: sleepingAmps },
    { change: "bench", field: "when", value: when },
    { change: "bench", field: "wiggled", value: wiggled },
    { change: "bench", field: "job", value: about },
  ]);
}

/** Fields by name: a job from a file and one from a bench may hold them in another order. */
function inOrder(job: Job): readonly (readonly [string, unknown])[] {
  return Object.entries(job).sort(([one], [other]) => one.localeCompare(other));
}
