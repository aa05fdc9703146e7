import { type Outcome, ok, refuse } from "../../core/base/outcome.ts";
import { DRAIN_WORDS } from "../../core/base/words/drain.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { DRAIN } from "../../core/diagnose/drain.ts";
import { isSolved, type Job } from "../../core/diagnose/job.ts";
import { jobShape } from "../../schemas/jobShape.ts";
import type { Json } from "../../schemas/json.ts";
import { unpacked } from "./packed.ts";

/** What the row of a job tells of it, and what it is found by beside vehicle and what was told. */
export interface JobFacts {
  readonly vehicle: string;
  readonly told: string;
  /** Label of the function check that is complained of; empty where the circuit cannot be read. */
  readonly complaint: string;
  readonly readings: number;
  readonly suspect: string | null;
  readonly share: number | null;
  readonly isSolved: boolean;
  readonly words: string;
}

/** The facts of a job on its circuit. */
export function factsOfJob(job: Job, drawn: Outcome<Circuit>): JobFacts {
  const { checks, title, vehicle } = drawn.ok ? drawn.value : { checks: [], title: "", vehicle: "" };
  const own = checks.find(({ id }) => id === job.complaint)?.label;
  const complaint = own ?? (job.complaint === DRAIN ? DRAIN_WORDS.label : "");
  return {
    vehicle: job.vehicle,
    told: job.told,
    complaint,
    readings: job.readings.length,
    suspect: job.verdict?.suspect ?? null,
    share: job.verdict?.share ?? null,
    isSolved: isSolved(job),
    words: [title, vehicle ?? "", complaint, job.verdict?.suspect ?? "", job.done].join("\n"),
  };
}

/** A job as it lies in the library, packed. Refuses `job-damaged` where its bytes changed. */
export function jobIn(state: Buffer): Outcome<Job> {
  const text = unpacked(state);
  const read = text === null ? null : jobShape.safeParse(JSON.parse(text) as Json);
  return read?.success ? ok(read.data) : refuse("job-damaged");
}
