import { type Outcome, refuse } from "../core/base/outcome.ts";
import type { Circuit } from "../core/circuit/circuit.ts";
import { happensIn } from "../core/diagnose/comesAndGoes.ts";
import type { Job } from "../core/diagnose/job.ts";
import { misfitsOf } from "../core/diagnose/jobFits.ts";
import type { Seen } from "../core/diagnose/seen.ts";
import { wiggleSheet } from "../core/diagnose/wiggle.ts";
import { swingText } from "../core/diagnose/wiggleEntry.ts";
import { type JobFile, readJob } from "../schemas/job.ts";
import { seenOf } from "./asked.ts";
import { readBytes, writeFileWhole } from "./files.ts";

/** Reads a job file; refuses as reading any file does, and as `readJob`. */
export async function readJobFile(path: string): Promise<Outcome<JobFile>> {
  const bytes = await readBytes(path);
  return bytes.ok ? readJob(bytes.value) : bytes;
}

/** Whether a file's name says that it is a job's. */
export function isJobFile(path: string): boolean {
  return path.toLowerCase().endsWith(".job.json");
}

/** Writes a job file whole or not at all. Refuses `job-ending` where the name does not end in .job.json. */
export async function writeJobFile(path: string, text: string): Promise<Outcome<null>> {
  return isJobFile(path) ? writeFileWhole(path, text) : refuse("job-ending", { file: path });
}

/** What is typed of a complaint on the command line. */
export interface ComplaintTyped {
  readonly complaint?: string;
  readonly observed?: readonly string[];
  readonly battery?: string;
  readonly sleeping?: string;
  readonly when?: string;
  readonly wiggle?: readonly string[];
}

/** What was typed, with what a job says where nothing was: what the circuit has no check for is left out. */
export function typedOver<T extends ComplaintTyped>(circuit: Circuit, job: Job, typed: T): T {
  const gone = misfitsOf(circuit, job).checks;
  const known = job.complaint !== null && !gone.includes(job.complaint) ? job.complaint : undefined;
  const complaint = typed.complaint ?? known;
  const over = [...gone, ...(typed.observed ?? []).map((text) => text.split("=")[0])];
  const kept = Object.entries(job.observed).flatMap(([check, word]) =>
    over.includes(check) ? [] : [`${check}=${word}`],
  );
  const battery = typed.battery ?? (job.batteryVolts === null ? undefined : String(job.batteryVolts));
  const sleeping =
    typed.sleeping ?? (job.sleepingAmps === undefined ? undefined : String(Math.round(1e6 * job.sleepingAmps) / 1000));
  const happens = happensIn(job.when).join(",");
  const when = typed.when ?? (happens === "" ? undefined : happens);
  const observed = [...kept, ...(typed.observed ?? [])];
  const moved = movedIn(circuit, job, seenOf(circuit, complaint, observed, sleeping));
  return {
    ...typed,
    observed,
    ...(complaint !== undefined && { complaint }),
    ...(battery !== undefined && { battery }),
    ...(sleeping !== undefined && { sleeping }),
    ...(when !== undefined && { when }),
    wiggle: [...moved, ...(typed.wiggle ?? [])],
  };
}

/** What the meter kept while places were moved, as it is typed: of the places that are still moved for the complaint. */
function movedIn(circuit: Circuit, { wiggled = [] }: Job, seen: Outcome<Seen>): readonly string[] {
  if (wiggled.length === 0 || !seen.ok) return [];
  const { complaint, others } = seen.value;
  const { rows } = wiggleSheet(circuit, { ...complaint, word: "sometimes" }, others, [], []);
  const places = new Set(rows.map(({ place }) => place.id));
  return wiggled.flatMap((each) => (places.has(each.place) ? [`${each.place} : ${swingText(each)}`] : []));
}
