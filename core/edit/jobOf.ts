import type { Job } from "../diagnose/job.ts";
import type { Bench } from "./bench.ts";

/** The job in hand, with what the bench holds of it; null where there is none. */
export function jobOf({ job, complaint, observed, readings, batteryVolts }: Bench): Job | null {
  return job && { ...job, complaint, observed, readings, batteryVolts };
}
