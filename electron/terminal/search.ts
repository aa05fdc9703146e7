import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Job } from "../../core/diagnose/job.ts";
import type { Reading } from "../../core/diagnose/reading.ts";
import type { Seen } from "../../core/diagnose/seen.ts";
import { type KnownNow, knownOf } from "../asked.ts";
import { typedOver } from "../jobFile.ts";
import { need } from "./console.ts";
import { complaintOf, type Typed } from "./given.ts";
import { type JobTyped, jobFrom } from "./job.ts";
import { rowsReadBack } from "./sheetBack.ts";
import { type WeightsTyped, weighed } from "./weights.ts";

/** The options that every search takes, as typed. */
export interface SearchTyped extends Typed, JobTyped, WeightsTyped {
  readonly read?: readonly string[];
  readonly battery?: string;
  /** Code of a printed sheet whose rows are read back. */
  readonly sheet?: string;
}

/** A search as it was typed, over the job it goes on from. */
export interface Search<T extends SearchTyped> {
  readonly typed: T;
  readonly seen: Seen;
  /** Readings of the job, then those read back from a sheet, then those typed in full. */
  readonly known: KnownNow;
  readonly job: Job | null;
  /** What is to be said of the job, in sentences. */
  readonly notes: readonly string[];
}

/** What is searched for, out of what was typed and the job it goes on from. Refuses as each of them does. */
export async function searchFrom<T extends SearchTyped>(circuit: Circuit, options: T): Promise<Search<T>> {
  const from = await jobFrom(circuit, options);
  const job = from?.file.job ?? null;
  const typed = job ? typedOver(circuit, job, options) : options;
  const seen = complaintOf(circuit, typed);
  const stored = job?.readings ?? [];
  const rows = typed.sheet === undefined ? [] : (typed.read ?? []).filter(isRow);
  const inFull = (typed.read ?? []).filter((text) => !rows.includes(text));
  const known = need(knownOf(circuit, inFull, typed.battery, await weighed(circuit, typed)));
  const readBack: readonly Reading[] =
    typed.sheet === undefined
      ? []
      : need(rowsReadBack(circuit, seen, { ...known, readings: stored }, typed.sheet, rows.join(" ")));
  const readings = [...stored, ...readBack, ...known.readings];
  return { typed, seen, known: { ...known, readings }, job, notes: from?.notes ?? [] };
}

/** `7=11.9`, as a row of a sheet is read back. */
function isRow(text: string): boolean {
  return /^\s*\d+\s*=/.test(text);
}
