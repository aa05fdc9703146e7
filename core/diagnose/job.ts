import type { Amps, Share, Volts } from "../base/units.ts";
import type { Observed } from "../live/judge.ts";
import type { Circumstance } from "./comesAndGoes.ts";
import { isReading, type Reading } from "./reading.ts";
import type { Wiggled } from "./wiggle.ts";

/** What a person took for the cause, and filed. */
export interface FiledVerdict {
  /** The suspect's id, as the command line spells it: `W14:open`, several faults joined by "+". */
  readonly suspect: string;
  /** How likely it was when it was filed. */
  readonly share: Share;
  /** When it was filed, ISO 8601; null where nobody noted it. */
  readonly time: string | null;
}

/** One vehicle and complaint: what was told, seen and read, what it came to, and what was done. */
export interface Job {
  /** Tells one job from every other; it goes along in the job's file. */
  readonly id: string;
  /** This very vehicle: its plate or fleet number. */
  readonly vehicle: string;
  /** The complaint in the words of whoever brought it. */
  readonly told: string;
  /** When the complaint shows. */
  readonly when: readonly Circumstance[];
  /** Id of the function check that is complained of. */
  readonly complaint: string | null;
  /** What was seen of the function checks, by id. */
  readonly observed: Readonly<Record<string, Observed>>;
  readonly readings: readonly Reading[];
  /** Volts of the battery at rest, measured; null where nobody did. */
  readonly batteryVolts: Volts | null;
  /** Amps expected of the sleeping vehicle, and what moving places did; absent where nobody said. */
  readonly sleepingAmps?: Amps;
  readonly wiggled?: readonly Wiggled[];
  readonly verdict: FiledVerdict | null;
  /** What was done about it; empty while nothing was. */
  readonly done: string;
  /** What was read after that, to prove the repair. */
  readonly after: readonly Reading[];
}

/** What a bench holds of a job whether there is one or not. */
type OnAnyBench = "complaint" | "observed" | "readings" | "batteryVolts" | "sleepingAmps" | "when" | "wiggled";

/** The rest of a job: who and what it is about, and how it ended. */
export type JobAbout = Omit<Job, OnAnyBench>;

/** What may be said of a job by hand. */
export type JobFacts = Pick<Job, "vehicle" | "told" | "done" | "after">;

/** Most characters of a job's texts, and most readings after the repair. */
export const JOB_LIMITS = { id: 60, vehicle: 80, told: 1_000, done: 1_000, suspect: 4_000, after: 500 } as const;

/** A job with this id of which nothing is said yet. */
export function jobAbout(id: string): JobAbout {
  return { id, vehicle: "", told: "", verdict: null, done: "", after: [] };
}

/** Whether a job is over: its verdict is filed and what was done is written down. Only such a job counts as a find. */
export function isSolved({ verdict, done }: Pick<Job, "verdict" | "done">): boolean {
  return verdict !== null && done.trim() !== "";
}

/** Whether a value from outside has the shape of what a bench holds of a job. */
export function isJobAbout(value: unknown): value is JobAbout {
  if (typeof value !== "object" || value === null) return false;
  const { id, vehicle, told, verdict, done, after } = value as Record<string, unknown>;
  return (
    isText(id, JOB_LIMITS.id) &&
    id !== "" &&
    isText(vehicle, JOB_LIMITS.vehicle) &&
    isText(told, JOB_LIMITS.told) &&
    isText(done, JOB_LIMITS.done) &&
    (verdict === null || isVerdict(verdict)) &&
    Array.isArray(after) &&
    after.length <= JOB_LIMITS.after &&
    after.every(isReading)
  );
}

function isText(value: unknown, most: number): boolean {
  return typeof value === "string" && value.length <= most;
}

function isVerdict(value: unknown): boolean {
  if (typeof value !== "object" || value === null) return false;
  const { suspect, share, time } = value as Record<string, unknown>;
  const isShare = typeof share === "number" && share >= 0 && share <= 1;
  return isText(suspect, JOB_LIMITS.suspect) && suspect !== "" && isShare && (time === null || isText(time, 40));
}
