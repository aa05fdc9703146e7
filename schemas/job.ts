import { z } from "zod";
import { type Outcome, ok, refuse } from "../core/base/outcome.ts";
import type { Circuit } from "../core/circuit/circuit.ts";
import { wiringHash } from "../core/circuit/wiringHash.ts";
import type { Job } from "../core/diagnose/job.ts";
import { refusalOf } from "./issue.ts";
import { JOB_FIELDS, jobShape } from "./jobShape.ts";
import { type Json, parseJson } from "./json.ts";
import { LIMITS } from "./limits.ts";
import { textOf } from "./text.ts";

/** The version of the job file that this program writes. */
export const JOB_VERSION = 1;
/** The format that a job file names. */
export const JOB_FORMAT = "wirefathom/job";

/** The circuit that a job was noted on. */
export interface JobCircuit {
  readonly title: string;
  /** As `wiringHash` gives it. */
  readonly hash: string;
}

/** What a job file says: a job, and the circuit that it belongs to. */
export interface JobFile {
  readonly circuit: JobCircuit;
  readonly job: Job;
}

const fileShape = z.strictObject({
  format: z.literal(JOB_FORMAT),
  version: z.literal(JOB_VERSION),
  circuit: z.strictObject({
    title: z.string().max(LIMITS.labelLength),
    hash: z.string().regex(/^[0-9a-f]{8}$/),
  }),
  job: jobShape,
});

/**
 * Reads a `*.job.json`, given as text or bytes. Refuses `job-format`, `file-newer`, and with the path or the line whatever is
 * wrong in it; whether it fits a circuit is another question, which `misfitsOf` answers.
 */
export function readJob(file: string | Uint8Array): Outcome<JobFile> {
  const text = textOf(file);
  if (!text.ok) return text;
  const json = parseJson(text.value);
  if (!json.ok) return json;
  const { format, version } = json.value as { readonly format?: Json; readonly version?: Json };
  if (format !== JOB_FORMAT)
    return refuse("job-format", { format: typeof format === "string" ? format.slice(0, 40) : "nothing" });
  if (typeof version === "number" && version > JOB_VERSION)
    return refuse("file-newer", { version, known: JOB_VERSION });
  const parsed = fileShape.safeParse(json.value);
  if (!parsed.success) return { ok: false, refusal: refusalOf(parsed.error.issues, json.value) };
  const { circuit, job } = parsed.data;
  return ok({ circuit, job });
}

/** A job on its circuit as the text of its file; the same job always gives the same bytes. */
export function formatJob(circuit: Circuit, job: Job): string {
  const about: JobCircuit = { title: circuit.title, hash: wiringHash(circuit) };
  return `${JSON.stringify({ format: JOB_FORMAT, version: JOB_VERSION, circuit: about, job: inOrder(job) }, null, 2)}\n`;
}

/** The fields of a job in the schema's order. */
function inOrder(job: Job): object {
  return Object.fromEntries(JOB_FIELDS.map((field) => [field, job[field]]));
}

/** Whether a text is meant as a job file, by its own word; it may still be refused. */
export function isJobText(text: string): boolean {
  return /^\s*\{\s*"format"\s*:\s*"wirefathom\/job"/.test(text.slice(0, 400));
}
