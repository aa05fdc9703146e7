import type { Job } from "../diagnose/job.ts";
import type { Bench } from "./bench.ts";

/** The job in hand, with what the bench holds of it; null where there is none. */
export function jobOf(bench: Bench): Job | null {
  const { job, complaint, observed, readings, batteryVolts, sleepingAmps, when, wiggled } = bench;
  return (
    job && {
      ...job,
      complaint,
      observed,
      readings,
      batteryVolts,
      when,
      ...(sleepingAmps !== null && { sleepingAmps }),
      ...(wiggled.length > 0 && { wiggled }),
    }
  );
}
