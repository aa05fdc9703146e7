import type { Circuit } from "../circuit/circuit.ts";
import { parseFault } from "../live/fault.ts";
import { checkFor } from "./drain.ts";
import type { Job } from "./job.ts";
import type { Reading } from "./reading.ts";
import { readingFits } from "./readingFits.ts";

/** What of a job a circuit has no place for. All of it is kept with the job; it only does not count. */
export interface Misfits {
  /** Numbers of readings, from 1, whose points or settings are not there. */
  readonly readings: readonly number[];
  /** Ids of function checks that are not there: the complaint, and what was seen. */
  readonly checks: readonly string[];
  /** The verdict where the circuit has nothing that could suffer it; null where it has, or none is filed. */
  readonly verdict: string | null;
}

/** What of a job does not fit a circuit, as where the drawing was changed since. */
export function misfitsOf(circuit: Circuit, job: Job): Misfits {
  const named = [...(job.complaint === null ? [] : [job.complaint]), ...Object.keys(job.observed)];
  const suspect = job.verdict?.suspect ?? null;
  const isThere = suspect?.split("+").every((fault) => parseFault(circuit, fault).ok) ?? true;
  return {
    readings: strays(circuit, job.readings),
    checks: [...new Set(named)].filter((check) => checkFor(circuit, check) === null),
    verdict: isThere ? null : suspect,
  };
}

function strays(circuit: Circuit, readings: readonly Reading[]): readonly number[] {
  return readings.flatMap((reading, index) => (readingFits(circuit, reading) ? [] : [index + 1]));
}
