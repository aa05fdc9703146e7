import { type Outcome, ok, refuse } from "../../../core/base/outcome.ts";
import type { Recorded } from "../../../core/lesson/move.ts";
import type { AttemptRow, KeptAttempt } from "../../../schemas/calls.ts";
import type { AddedMoves, TakenExercise, Where } from "../library.ts";
import { packed, unpacked } from "../packed.ts";
import { factsOfRoute, routeIn } from "../route.ts";
import { noteAttempt } from "./recent.ts";
import type { Session } from "./session.ts";
import { sql } from "./sql.ts";

const ROW = sql`e.id, e.title, e.complaint, coalesce(a.minutes, 0) AS minutes, coalesce(a.moves, 0) AS moves,
  coalesce(a.over, false) AS "isOver", coalesce(a.made, e.made) AS made, coalesce(a.edited, e.made) AS edited, a.removed`;

const NO_ROUTE = "[]";

/** Exercises of the library with this person's own work on them: those under way first, newest first. */
export function listAttempts(session: Session, where: Where): Promise<AttemptRow[]> {
  return session.all(sql`
    SELECT ${ROW} FROM exercises e LEFT JOIN attempts a ON a.exercise = e.id AND a.person = ${session.person}
      WHERE (a.removed IS NOT NULL) = ${where === "bin"} AND a.gone IS NOT TRUE
      ORDER BY "isOver", edited DESC, e.key DESC`);
}

/** Takes an exercise in by its id; one that is known keeps its route, and comes back out of the bin. */
export async function takeAttempt(
  session: Session,
  { id, text, exercise }: TakenExercise,
  now: Date,
): Promise<Outcome<KeptAttempt>> {
  const complaint = exercise.circuit.checks.find((check) => check.id === exercise.complaint)?.label ?? "";
  await session.run(sql`
    INSERT INTO exercises (id, title, complaint, made, file)
      VALUES (${id}, ${exercise.title}, ${complaint}, ${now}, ${packed(text)})
    ON CONFLICT (id) DO NOTHING`);
  await ownAttempt(session, id, now);
  await session.run(sql`
    UPDATE attempts SET removed = NULL, gone = false WHERE exercise = ${id} AND person = ${session.person}`);
  return openAttempt(session, id);
}

/** Work on an exercise begins where there is none of this person yet. */
async function ownAttempt(session: Session, id: string, now: Date): Promise<void> {
  await session.run(sql`
    INSERT INTO attempts (person, exercise, learner, minutes, moves, over, made, edited, route)
      SELECT ${session.person}, e.id, '', 0, 0, false, ${now}, ${now}, ${packed(NO_ROUTE)} FROM exercises e WHERE e.id = ${id}
    ON CONFLICT (person, exercise) DO NOTHING`);
}

/** Work on an exercise as it was kept last, noted as what is on the bench. Refuses `attempt-unknown` and `attempt-damaged`. */
export async function openAttempt(session: Session, id: string): Promise<Outcome<KeptAttempt>> {
  const kept = await attemptAt(session, id);
  if (kept.ok) await noteAttempt(session, id);
  return kept;
}

async function attemptAt(session: Session, id: string): Promise<Outcome<KeptAttempt>> {
  const row = await session.first<{ readonly learner: string; readonly file: Buffer; readonly route: Buffer }>(sql`
    SELECT coalesce(a.learner, '') AS learner, e.file, coalesce(a.route, ${packed(NO_ROUTE)}) AS route
      FROM exercises e LEFT JOIN attempts a ON a.exercise = e.id AND a.person = ${session.person}
      WHERE e.id = ${id} AND a.removed IS NULL`);
  if (!row) return refuse("attempt-unknown");
  const text = unpacked(row.file);
  const route = routeIn(row.route);
  return text === null || !route ? refuse("attempt-damaged") : ok({ id, text, learner: row.learner, route });
}

/** Keeps moves behind the first `from` of a route. Refuses as `openAttempt`, and `attempt-elsewhere` where another page was faster. */
export async function addMoves(
  session: Session,
  { id, from, moves, learner }: AddedMoves,
  now: Date,
): Promise<Outcome<Record<never, never>>> {
  await ownAttempt(session, id, now);
  await session.run(sql`SELECT 1 FROM attempts WHERE exercise = ${id} AND person = ${session.person} FOR UPDATE`);
  const kept = await attemptAt(session, id);
  if (!kept.ok) return kept;
  if (kept.value.route.length !== from) return refuse("attempt-elsewhere");
  const route: readonly Recorded[] = [...(kept.value.route as readonly Recorded[]), ...moves];
  const { minutes, moves: count, isOver } = factsOfRoute(route);
  await session.run(sql`
    UPDATE attempts SET learner = ${learner}, minutes = ${minutes}, moves = ${count}, over = ${isOver}, edited = ${now},
        route = ${packed(JSON.stringify(route))}
      WHERE exercise = ${id} AND person = ${session.person}`);
  return ok({});
}

/** Begins an exercise anew: its route goes, whoever works on it stays. Refuses as `openAttempt`. */
export async function restartAttempt(session: Session, id: string, now: Date): Promise<Outcome<KeptAttempt>> {
  await session.run(sql`
    UPDATE attempts SET minutes = 0, moves = 0, over = false, edited = ${now}, route = ${packed(NO_ROUTE)}
      WHERE exercise = ${id} AND person = ${session.person} AND removed IS NULL`);
  return openAttempt(session, id);
}

/** Moves this person's work on an exercise to the bin, or with null for the moment back. Refuses `attempt-unknown`. */
export async function moveAttempt(session: Session, id: string, removed: Date | null): Promise<Outcome<AttemptRow>> {
  if (removed) await ownAttempt(session, id, removed);
  const row = await session.first<AttemptRow>(sql`
    UPDATE attempts a SET removed = ${removed}::timestamptz FROM exercises e
      WHERE e.id = a.exercise AND e.id = ${id} AND a.person = ${session.person} AND a.gone IS NOT TRUE
        AND (a.removed IS NULL) = ${removed !== null}
      RETURNING ${ROW}`);
  return row ? ok(row) : refuse("attempt-unknown");
}
