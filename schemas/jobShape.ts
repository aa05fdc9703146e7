import { z } from "zod";
import { CIRCUMSTANCES } from "../core/diagnose/comesAndGoes.ts";
import { JOB_LIMITS, type Job } from "../core/diagnose/job.ts";
import { INSTRUMENTS } from "../core/diagnose/reading.ts";
import { OBSERVED_WORDS } from "../core/live/judge.ts";
import { OPEN_FROM } from "../core/trade/instruments.ts";
import { condition } from "./circuitShape.ts";
import { LIMITS } from "./limits.ts";

/** Longest name of a point, a part or a check that a reading or an observation may carry. */
const NAME = 2 * LIMITS.idLength + 1;

const name = z.string().min(1).max(NAME);
const time = z.string().max(40).nullable();
/** Far above any battery that may be probed; what fits the circuit is judged where it is known. */
const volts = z.number().min(-2_000).max(2_000);

const reading = z.strictObject({
  red: name,
  black: name,
  instrument: z.enum(INSTRUMENTS),
  lampTo: z.enum(["battery +", "battery -", "black"]).nullable(),
  condition,
  volts: volts.nullable(),
  ohms: z.number().min(0).max(OPEN_FROM).exactOptional(),
  amps: z.number().min(0).max(2_000).exactOptional(),
  word: z.string().max(NAME).nullable(),
  standing: z.enum(["taken", "doubted", "struck"]),
  time,
});

const shape = z.strictObject({
  id: z.string().min(1).max(JOB_LIMITS.id),
  vehicle: z.string().max(JOB_LIMITS.vehicle),
  told: z.string().max(JOB_LIMITS.told),
  when: z.array(z.enum(CIRCUMSTANCES)).max(CIRCUMSTANCES.length),
  complaint: name.nullable(),
  observed: z.record(name, z.enum(OBSERVED_WORDS)),
  readings: z.array(reading).max(LIMITS.readings),
  batteryVolts: volts.nullable(),
  sleepingAmps: z.number().min(0).max(2).exactOptional(),
  wiggled: z
    .array(z.strictObject({ place: name, min: volts, max: volts, when: z.string().max(80) }))
    .max(LIMITS.readings)
    .exactOptional(),
  verdict: z
    .strictObject({
      suspect: z.string().min(1).max(JOB_LIMITS.suspect),
      share: z.number().min(0).max(1),
      time,
    })
    .nullable(),
  done: z.string().max(JOB_LIMITS.done),
  after: z.array(reading).max(JOB_LIMITS.after),
});

/** A job as a file and the calls between page and host carry it; what comes out is a `Job`. */
export const jobShape = shape as unknown as z.ZodType<Job, Job>;

/** The fields of a job in the order of its file. */
export const JOB_FIELDS = Object.keys(shape.shape) as readonly (keyof Job)[];

type Frozen<T> = T extends readonly (infer _)[] | object ? { readonly [K in keyof T]: Frozen<T[K]> } : T;

/** Fails to compile where the schema gives what is no job. */
export const shapeIsJob = (read: Frozen<z.infer<typeof shape>>): Job => read;
