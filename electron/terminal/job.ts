import { randomUUID } from "node:crypto";
import { resolve } from "node:path";
import { type Outcome, ok, refuse } from "../../core/base/outcome.ts";
import type { Volts } from "../../core/base/units.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { sleepingAmpsOf } from "../../core/diagnose/drain.ts";
import { type Job, jobAbout } from "../../core/diagnose/job.ts";
import { misfitWords } from "../../core/diagnose/misfitWords.ts";
import type { Reading } from "../../core/diagnose/reading.ts";
import type { Seen } from "../../core/diagnose/seen.ts";
import { readHappens, readWiggled } from "../../core/diagnose/wiggleEntry.ts";
import { jobTextRefusal } from "../../core/edit/jobFields.ts";
import { formatJob, type JobFile } from "../../schemas/job.ts";
import { readJobFile, writeJobFile } from "../jobFile.ts";
import { type Console, need } from "./console.ts";
import type { Typed } from "./given.ts";

/** What may be typed of a job. */
export interface JobTyped extends Pick<Typed, "sleeping" | "when" | "wiggle"> {
  readonly job?: string;
  readonly saveJob?: string;
  readonly vehicle?: string;
  readonly told?: string;
}

/** The job typed after --job, with what is to be said of it; null where none was typed. */
export async function jobFrom(
  circuit: Circuit,
  typed: JobTyped,
): Promise<{ readonly file: JobFile; readonly notes: readonly string[] } | null> {
  if (typed.job === undefined) return null;
  const file = need(await readJobFile(typed.job));
  return { file, notes: misfitWords(circuit, file.job, file.circuit) };
}

/** What is known by now, to be written after --save-job. */
interface Stands {
  readonly seen: Seen;
  readonly readings: readonly Reading[];
  readonly batteryVolts: Volts | null;
}

/** Writes the job as it stands where --save-job asks for it; one that none was given to begins under an id of its own. */
export async function jobSaved(
  console: Console,
  circuit: Circuit,
  before: Job | null,
  typed: JobTyped,
  { seen, readings, batteryVolts }: Stands,
): Promise<void> {
  if (typed.saveJob === undefined) return;
  const { vehicle, told } = typed;
  const said = { ...(vehicle !== undefined && { vehicle }), ...(told !== undefined && { told }) };
  const refusal = jobTextRefusal(said);
  if (refusal) need({ ok: false, refusal });
  const happens = need(readHappens(typed.when ?? ""));
  const moved = (typed.wiggle ?? []).map((text) => need(readWiggled(text, circuit.nominalVolts)));
  const wiggled = [
    ...(before?.wiggled ?? []).filter(({ place }) => !moved.some((each) => each.place === place)),
    ...moved,
  ];
  const sleepingAmps = typed.sleeping === undefined ? undefined : need(sleepingAmpsOf(typed.sleeping));
  const observations = [seen.complaint, ...seen.others].map(({ check, word }) => [check.id, word] as const);
  const job: Job = {
    ...(before ?? { ...jobAbout(randomUUID()) }),
    ...said,
    when: typed.when === undefined ? (before?.when ?? []) : happens,
    ...(wiggled.length > 0 && { wiggled }),
    ...(typeof sleepingAmps === "number" && { sleepingAmps }),
    complaint: seen.complaint.check.id,
    observed: { ...before?.observed, ...Object.fromEntries(observations) },
    readings,
    batteryVolts,
  };
  const isSame = typed.job !== undefined && resolve(typed.job) === resolve(typed.saveJob);
  if (before && isSame) need(await unchangedSince(typed.saveJob, before));
  need(await writeJobFile(typed.saveJob, formatJob(circuit, job)));
  console.complain(`${typed.saveJob}: the job as it stands\n`);
}

/** Refuses `job-changed-elsewhere` where the file that a job was read from has it otherwise by now: another command kept it meanwhile. */
async function unchangedSince(path: string, before: Job): Promise<Outcome<null>> {
  const now = await readJobFile(path);
  const isOther = now.ok && now.value.job.id === before.id && JSON.stringify(now.value.job) !== JSON.stringify(before);
  return isOther ? refuse("job-changed-elsewhere", { file: path }) : ok(null);
}
