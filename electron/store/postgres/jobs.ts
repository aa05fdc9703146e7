import { type Outcome, ok, refuse } from "../../../core/base/outcome.ts";
import type { Circuit } from "../../../core/circuit/circuit.ts";
import type { Job } from "../../../core/diagnose/job.ts";
import type { JobRow } from "../../../schemas/calls.ts";
import { factsOfJob, jobIn } from "../jobFacts.ts";
import type { JobPlace, JobsAsk, Listed } from "../library.ts";
import { packed, unpacked } from "../packed.ts";
import { indexOf, queryOf } from "./search.ts";
import type { Session } from "./session.ts";
import { sql } from "./sql.ts";

const ROW = sql`j.id, c.id AS circuit, c.title, c.version, j.vehicle, j.told, j.complaint, j.readings, j.suspect, j.share,
  j.solved AS "isSolved", j.made, j.edited, j.removed`;

/** Keeps jobs as they stand on a bench of a circuit; one that is as it was is left alone. */
export async function keepJobs(
  session: Session,
  key: number,
  circuit: () => Promise<Outcome<Circuit>>,
  jobs: readonly Job[],
  now: Date,
): Promise<void> {
  for (const job of jobs) {
    const text = JSON.stringify(job);
    const found = await session.first<{ readonly state: Buffer }>(
      sql`SELECT state FROM jobs WHERE circuit = ${key} AND id = ${job.id}`,
    );
    if (found && unpacked(found.state) === text) continue;
    const { vehicle, told, complaint, readings, suspect, share, isSolved, words } = factsOfJob(job, await circuit());
    const search = indexOf([
      [vehicle, "A"],
      [told, "B"],
      [words, "D"],
    ]);
    await session.run(sql`
      INSERT INTO jobs (circuit, id, vehicle, told, complaint, readings, suspect, share, solved, made, edited, state, search)
        VALUES (${key}, ${job.id}, ${vehicle}, ${told}, ${complaint}, ${readings}, ${suspect}, ${share}, ${isSolved}, ${now},
          ${now}, ${packed(text)}, ${search}::tsvector)
      ON CONFLICT (circuit, id) DO UPDATE SET vehicle = excluded.vehicle, told = excluded.told,
        complaint = excluded.complaint, readings = excluded.readings, suspect = excluded.suspect, share = excluded.share,
        solved = excluded.solved, edited = excluded.edited, removed = NULL, state = excluded.state, search = excluded.search`);
  }
}

/** Jobs with how many there are in all: open ones first, newest first; where something is searched, the same among those found. */
export async function listJobs(
  session: Session,
  { search, where, circuit, from, limit }: JobsAsk,
): Promise<Listed<JobRow>> {
  const question = queryOf(search);
  if (search.trim() !== "" && question === null) return { rows: [], count: 0 };
  const wanted = sql`FROM jobs j JOIN circuits c ON c.key = j.circuit
    WHERE (j.removed IS NOT NULL) = ${where === "bin"} AND c.removed IS NULL
      ${circuit === null ? sql`` : sql`AND c.id = ${circuit}`}
      ${question === null ? sql`` : sql`AND j.search @@ ${question}::tsquery`}`;
  const rows = await session.all<JobRow>(
    sql`SELECT ${ROW} ${wanted} ORDER BY j.solved, j.edited DESC, j.key DESC LIMIT ${limit} OFFSET ${from}`,
  );
  const count = await session.first<{ readonly count: number }>(sql`SELECT count(*)::integer AS count ${wanted}`);
  return { rows, count: count?.count ?? 0 };
}

/** A job as it was kept last. Refuses `job-unknown`, and `job-damaged` where its bytes changed on the disk. */
export async function jobAt(session: Session, { circuit, id }: JobPlace): Promise<Outcome<Job>> {
  const found = await session.first<{ readonly state: Buffer }>(sql`
    SELECT j.state FROM jobs j JOIN circuits c ON c.key = j.circuit
      WHERE c.id = ${circuit} AND j.id = ${id} AND j.removed IS NULL AND c.removed IS NULL`);
  return found ? jobIn(found.state) : refuse("job-unknown");
}

/** Moves a job to the bin, or with null for the moment back, and gives its row. Refuses `job-unknown`. */
export async function moveJob(
  session: Session,
  { circuit, id }: JobPlace,
  removed: Date | null,
): Promise<Outcome<JobRow>> {
  const row = await session.first<JobRow>(sql`
    UPDATE jobs j SET removed = ${removed}::timestamptz FROM circuits c
      WHERE c.key = j.circuit AND c.id = ${circuit} AND j.id = ${id} AND (j.removed IS NULL) = ${removed !== null}
        AND c.removed IS NULL
      RETURNING ${ROW}`);
  return row ? ok(row) : refuse("job-unknown");
}
