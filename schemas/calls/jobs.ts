import { z } from "zod";
import { JOB_LIMITS } from "../../core/diagnose/job.ts";
import { jobShape } from "../jobShape.ts";
import { CALL_LIMITS, type Call, circuitId, moment } from "./call.ts";

/** A job as the library lists it. */
export const jobRow = z.strictObject({
  id: z.string().max(JOB_LIMITS.id),
  /** Id, title and version of the circuit that it stands on. */
  circuit: circuitId,
  title: z.string(),
  version: z.int().min(1),
  vehicle: z.string(),
  told: z.string(),
  /** Label of the function check that is complained of; empty where none is. */
  complaint: z.string(),
  readings: z.int(),
  /** The verdict that was filed, and how likely it was then; null where none is. */
  suspect: z.string().nullable(),
  share: z.number().nullable(),
  /** True once a verdict is filed and what was done is written down. */
  isSolved: z.boolean(),
  made: moment,
  edited: moment,
  /** When it went to the bin; null while it is in the library. */
  removed: moment.nullable(),
});
/** A job as the library lists it. */
export type JobRow = z.infer<typeof jobRow>;

/** Jobs that a save of a bench keeps with it: the one in hand, and those put away since the save before. */
export const jobsKept = z.array(jobShape).max(50).default([]);

const one = z.strictObject({ circuit: circuitId, id: z.string().min(1).max(JOB_LIMITS.id) });

/** Calls on the jobs of the library. They are kept with the bench that they stand on, by `circuits.save` and `benches.save`. */
export const JOB_CALLS = {
  /** Jobs of all circuits or of one: open ones first, newest first. Every word of a search must be found, as a word's beginning. */
  "jobs.list": {
    argument: z.strictObject({
      search: z.string().max(CALL_LIMITS.search).default(""),
      circuit: circuitId.nullable().default(null),
      from: z.int().min(0).default(0),
      limit: z.int().min(1).max(CALL_LIMITS.rows).default(CALL_LIMITS.rows),
      where: z.enum(["library", "bin"]).default("library"),
    }),
    answer: z.strictObject({ rows: z.array(jobRow), count: z.int() }),
  },
  /** A job as it was kept last. Refuses `job-unknown` and `job-damaged`. */
  "jobs.read": { argument: one, answer: z.strictObject({ job: jobShape }) },
  /** Moves a job to the bin, where it stays for 30 days, and answers with its row. */
  "jobs.remove": { argument: one, answer: jobRow },
  /** Brings a job back from the bin. */
  "jobs.restore": { argument: one, answer: jobRow },
} as const satisfies Readonly<Record<string, Call>>;
