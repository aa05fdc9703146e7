import { refuse } from "../../core/base/outcome.ts";
import { sentence } from "../../core/base/words.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { wiringHash } from "../../core/circuit/wiringHash.ts";
import type { Job } from "../../core/diagnose/job.ts";
import { misfitWords } from "../../core/diagnose/misfitWords.ts";
import type { Bench } from "../../core/edit/bench.ts";
import { takeJobUp } from "../../core/edit/commands/takeJobUp.ts";
import { jobOf } from "../../core/edit/jobOf.ts";
import { formatJob, type JobCircuit, readJob } from "../../schemas/job.ts";
import { BIN_DAYS } from "../../schemas/limits.ts";
import type { Host } from "../host/host.ts";
import { jobFileName, jobName } from "../words/job.ts";
import { fileSaved, type Going, listed, opened, refused } from "./going.ts";
import { benchOf } from "./state.ts";
import type { AppStore } from "./store.ts";

interface Place {
  readonly circuit: string;
  readonly id: string;
}

const NOT_TAKEN = "That job was not taken up.";

/** What waits is kept first: it may be this very job. Its circuit is opened where it stood. */
export async function jobOpened(going: Going, { circuit, id }: Place): Promise<void> {
  const { host, store, autosave, isLast } = going;
  await autosave.flush();
  const read = await host.ask("jobs.read", { circuit, id });
  if (!isLast()) return;
  if (!read.ok) return refused(store, read.refusal, NOT_TAKEN, "open");
  if (store.getState().open?.id !== circuit) await opened(going, host.ask("circuits.open", { id: circuit }), NOT_TAKEN);
  if (isLast() && store.getState().open?.id === circuit) taken(store, read.value.job, null);
}

/** Takes a job up on the open bench, and says what of it has no place there. */
function taken(store: AppStore, job: Job, from: JobCircuit | null): void {
  const bench = benchOf(store.getState());
  if (!bench) return;
  const notes = misfitWords(bench.circuit, job, from);
  store.dispatch({ do: "make", command: (now) => takeJobUp(now, job) });
  const title = `${jobName(job)} is taken up, not all of it.`;
  if (notes.length > 0) store.dispatch({ do: "tell", notice: { title, words: notes.join(" "), isError: true } });
}

/** A job from a file: on the open circuit, or on that of the library which it was noted on. */
export async function jobTextOpened(going: Going, name: string, text: string): Promise<void> {
  const { host, store, isLast } = going;
  const read = readJob(text);
  if (!read.ok) return refused(store, read.refusal, `${name} was not opened.`, "open");
  const { circuit, job } = read.value;
  if (!benchOf(store.getState())) {
    const id = await circuitOf(host, circuit);
    if (!isLast()) return;
    if (id === null) return store.dispatch({ do: "tell", notice: withoutCircuit(name, circuit.title) });
    await opened(going, host.ask("circuits.open", { id }), `${name} was not opened.`);
  }
  if (isLast()) taken(store, job, circuit);
}

function withoutCircuit(name: string, title: string) {
  return {
    title: `${name} was not opened.`,
    words: `Its circuit "${title}" is not in the library. Open that circuit, or the one to go on with, then this file again.`,
    isError: true,
    kind: "open",
  } as const;
}

/** The circuit of the library with this wiring, else the one edited last with this title; null where there is none. */
async function circuitOf(host: Host, { title, hash }: JobCircuit): Promise<string | null> {
  const list = await host.ask("circuits.list", { search: title.slice(0, 200) });
  const rows = list.ok ? list.value.rows.filter((row) => row.title === title) : [];
  for (const { id } of rows) {
    const read = await host.ask("circuits.read", { id });
    if (read.ok && wiringHash(read.value.circuit as Circuit) === hash) return id;
  }
  return rows[0]?.id ?? null;
}

/** Saves after which the jobs are listed while nothing of the job in hand changes: the first may have kept an older one. */
const LISTED_SAVES = 2;

/** Tells at each save whether the list of jobs is still as the host has it: it is, once the job in hand was listed as it is. */
export function jobsAreListed(): (bench: Bench | null) => boolean {
  let before: Bench | null = null;
  let saves = 0;
  return (bench) => {
    const isSame = before !== null && bench !== null && JOB_FIELDS.every((name) => before?.[name] === bench[name]);
    saves = isSame ? saves + 1 : 1;
    before = bench;
    return saves > LISTED_SAVES;
  };
}

/** What of a bench stands in a row of the list of jobs. */
const JOB_FIELDS = ["job", "complaint", "observed", "readings"] as const satisfies readonly (keyof Bench)[];

/** Reads the jobs of the circuit on the bench. */
export async function jobsListed({ host, store }: Going): Promise<void> {
  const circuit = store.getState().open?.id ?? null;
  if (circuit === null) return;
  const list = await host.ask("jobs.list", { circuit }).catch(() => null);
  if (list?.ok && store.getState().open?.id === circuit) store.dispatch({ do: "jobs-listed", rows: list.value.rows });
}

/** Brings the job in hand into a file. */
export async function jobSaved(going: Going): Promise<void> {
  const bench = benchOf(going.store.getState());
  const job = bench && jobOf(bench);
  if (bench && job) await fileSaved(going, jobFileName(job, bench.circuit), formatJob(bench.circuit, job), "text");
  else refused(going.store, refuse("job-none").refusal, "Not saved.", "file");
}

/** Moves a job to the bin and offers to bring it back. */
export async function jobRemoved(going: Going, { circuit, id }: Place): Promise<void> {
  const { host, store } = going;
  const answer = await host.ask("jobs.remove", { circuit, id });
  if (!answer.ok)
    store.dispatch({ do: "tell", notice: { title: "Not deleted.", words: sentence(answer.refusal), isError: true } });
  else
    store.dispatch({
      do: "tell",
      notice: {
        title: `${jobName(answer.value)} is deleted.`,
        words: `It stands under Deleted for ${BIN_DAYS} days and can be brought back.`,
        isError: false,
        offers: [{ words: "Bring it back", action: { do: "restore-job", circuit, id } }],
      },
    });
  await listed(going);
}
