import { type Outcome, ok, refuse } from "../../../core/base/outcome.ts";
import type { Circuit } from "../../../core/circuit/circuit.ts";
import type { Job } from "../../../core/diagnose/job.ts";
import type { JobRow } from "../../../schemas/calls.ts";
import { factsOfJob, jobIn } from "../jobFacts.ts";
import type { JobPlace, JobsAsk, Listed } from "../library.ts";
import { packed, unpacked } from "../packed.ts";
import type { Connection } from "./connect.ts";
import { searchOf } from "./search.ts";
import type { Store } from "./store.ts";

const ROW = `j.id, c.id AS circuit, c.title, c.version, j.vehicle, j.told, j.complaint, j.readings, j.suspect, j.share,
  j.solved AS isSolved, j.made, j.edited, j.removed`;

/** Keeps jobs as they stand on a circuit's bench; one that is as it was is left alone. For use within a transaction. */
export function keepJobs(
  store: Store,
  key: number,
  circuit: () => Outcome<Circuit>,
  jobs: readonly Job[],
  now: Date,
): void {
  for (const job of jobs) keepJob(store, key, circuit, job, now.toISOString());
}

function keepJob({ connection }: Store, key: number, circuit: () => Outcome<Circuit>, job: Job, now: string): void {
  const text = JSON.stringify(job);
  const found = connection.prepare("SELECT key, state FROM jobs WHERE circuit = ? AND id = ?").get(key, job.id) as
    | { readonly key: number; readonly state: Buffer }
    | undefined;
  if (found && unpacked(found.state) === text) return;
  const { isSolved, words, ...facts } = factsOfJob(job, circuit());
  const row = connection
    .prepare(
      `INSERT INTO jobs (circuit, id, vehicle, told, complaint, readings, suspect, share, solved, made, edited, state)
         VALUES (:key, :id, :vehicle, :told, :complaint, :readings, :suspect, :share, :solved, :now, :now, :state)
       ON CONFLICT (circuit, id) DO UPDATE SET vehicle = :vehicle, told = :told, complaint = :complaint,
         readings = :readings, suspect = :suspect, share = :share, solved = :solved, edited = :now, removed = NULL,
         state = :state
       RETURNING key`,
    )
    .pluck()
    .get({ ...facts, key, id: job.id, solved: isSolved ? 1 : 0, now, state: packed(text) });
  connection
    .prepare("INSERT OR REPLACE INTO job_search (rowid, vehicle, told, words) VALUES (?, ?, ?, ?)")
    .run(row, job.vehicle, job.told, words);
}

/** Jobs with how many there are in all: open ones first, newest first; where something is searched, the same among those found. */
export function listJobs({ connection }: Store, { search, where, circuit, from, limit }: JobsAsk): Listed<JobRow> {
  const question = searchOf(search);
  if (search.trim() !== "" && question === null) return { rows: [], count: 0 };
  const wanted = [
    `j.removed IS ${where === "bin" ? "NOT NULL" : "NULL"}`,
    "c.removed IS NULL",
    ...(circuit === null ? [] : ["c.id = :circuit"]),
    ...(question === null ? [] : ["j.key IN (SELECT rowid FROM job_search WHERE job_search MATCH :question)"]),
  ].join(" AND ");
  const asked = { ...(circuit !== null && { circuit }), ...(question !== null && { question }) };
  const tables = `FROM jobs j JOIN circuits c ON c.key = j.circuit WHERE ${wanted}`;
  const rows = connection
    .prepare(`SELECT ${ROW} ${tables} ORDER BY j.solved, j.edited DESC, j.key DESC LIMIT :limit OFFSET :from`)
    .all({ ...asked, limit, from });
  const count = connection.prepare(`SELECT count(*) ${tables}`).pluck().get(asked);
  return { rows: rows.map(rowOf), count: count as number };
}

/** SQLite has no truth values. */
function rowOf(row: unknown): JobRow {
  const { isSolved: solved, ...rest } = row as Omit<JobRow, "isSolved"> & { readonly isSolved: number };
  return { ...rest, isSolved: solved === 1 };
}

/** A job as it was kept last. Refuses `job-unknown`, and `job-damaged` where its bytes changed on the disk. */
export function jobAt({ connection }: Store, { circuit, id }: JobPlace): Outcome<Job> {
  const state = connection
    .prepare(
      `SELECT j.state FROM jobs j JOIN circuits c ON c.key = j.circuit
         WHERE c.id = ? AND j.id = ? AND j.removed IS NULL AND c.removed IS NULL`,
    )
    .pluck()
    .get(circuit, id) as Buffer | undefined;
  return state ? jobIn(state) : refuse("job-unknown");
}

/** Moves a job to the bin, or with null for the moment back, and gives its row. Refuses `job-unknown`. */
export function moveJob({ connection }: Store, { circuit, id }: JobPlace, removed: Date | null): Outcome<JobRow> {
  const isThere = removed === null ? "j.removed IS NOT NULL" : "j.removed IS NULL";
  const key = connection
    .prepare(
      `SELECT j.key FROM jobs j JOIN circuits c ON c.key = j.circuit
         WHERE c.id = ? AND j.id = ? AND ${isThere} AND c.removed IS NULL`,
    )
    .pluck()
    .get(circuit, id) as number | undefined;
  if (key === undefined) return refuse("job-unknown");
  connection.prepare("UPDATE jobs SET removed = ? WHERE key = ?").run(removed?.toISOString() ?? null, key);
  return ok(
    rowOf(
      connection.prepare(`SELECT ${ROW} FROM jobs j JOIN circuits c ON c.key = j.circuit WHERE j.key = ?`).get(key),
    ),
  );
}

/** Lets go for good of jobs that went to the bin before a moment. For use within a transaction. */
export function emptyJobsBin(connection: Connection, before: string): void {
  const keys = connection.prepare("SELECT key FROM jobs WHERE removed < ?").pluck().all(before) as number[];
  for (const key of keys) letGoOfJob(connection, key);
}

/** Lets go for good of all jobs of a circuit. For use within a transaction. */
export function letGoOfJobs(connection: Connection, circuit: number): void {
  const keys = connection.prepare("SELECT key FROM jobs WHERE circuit = ?").pluck().all(circuit) as number[];
  for (const key of keys) letGoOfJob(connection, key);
}

function letGoOfJob(connection: Connection, key: number): void {
  connection.prepare("DELETE FROM job_search WHERE rowid = ?").run(key);
  connection.prepare("DELETE FROM jobs WHERE key = ?").run(key);
}
