import { type Outcome, ok, refuse } from "../../../core/base/outcome.ts";
import type { Recorded } from "../../../core/lesson/move.ts";
import type { AttemptRow, KeptAttempt } from "../../../schemas/calls.ts";
import type { AddedMoves, TakenExercise, Where } from "../library.ts";
import { packed, unpacked } from "../packed.ts";
import { factsOfRoute, routeIn } from "../route.ts";
import type { Connection } from "./connect.ts";
import type { Store } from "./open.ts";
import { noteAttempt } from "./recent.ts";

const ROW = "id, title, complaint, minutes, moves, over AS isOver, made, edited, removed";

/** Exercises that are kept or in the bin: those under way first, newest first. */
export function listAttempts({ connection }: Store, where: Where): AttemptRow[] {
  const wanted = `removed IS ${where === "bin" ? "NOT NULL" : "NULL"}`;
  return connection
    .prepare(`SELECT ${ROW} FROM attempts WHERE ${wanted} ORDER BY over, edited DESC, key DESC`)
    .all()
    .map(rowOf);
}

/** SQLite has no truth values. */
function rowOf(row: unknown): AttemptRow {
  const { isOver, ...rest } = row as Omit<AttemptRow, "isOver"> & { readonly isOver: number };
  return { ...rest, isOver: isOver === 1 };
}

/** Takes an exercise in by its id; one that is known keeps its route, and comes back out of the bin. */
export function takeAttempt(store: Store, { id, text, exercise }: TakenExercise, now: Date): Outcome<KeptAttempt> {
  const complaint = exercise.circuit.checks.find((check) => check.id === exercise.complaint)?.label ?? "";
  store.connection
    .prepare(
      `INSERT INTO attempts (id, title, complaint, learner, minutes, moves, over, made, edited, file, route)
         VALUES (:id, :title, :complaint, '', 0, 0, 0, :now, :now, :file, :route)
       ON CONFLICT (id) DO UPDATE SET removed = NULL`,
    )
    .run({
      id,
      title: exercise.title,
      complaint,
      now: now.toISOString(),
      file: packed(text),
      route: packed("[]"),
    });
  return openAttempt(store, id);
}

/** Work on an exercise as it was kept last, noted as what is on the bench. Refuses `attempt-unknown` and `attempt-damaged`. */
export function openAttempt(store: Store, id: string): Outcome<KeptAttempt> {
  const kept = attemptAt(store, id);
  if (kept.ok) noteAttempt(store, id);
  return kept;
}

function attemptAt({ connection }: Store, id: string): Outcome<KeptAttempt> {
  const row = connection
    .prepare("SELECT learner, file, route FROM attempts WHERE id = ? AND removed IS NULL")
    .get(id) as { readonly learner: string; readonly file: Buffer; readonly route: Buffer } | undefined;
  if (!row) return refuse("attempt-unknown");
  const text = unpacked(row.file);
  const route = routeIn(row.route);
  return text === null || !route ? refuse("attempt-damaged") : ok({ id, text, learner: row.learner, route });
}

/** Keeps moves behind the first `from` of a route. Refuses as `openAttempt`, and `attempt-elsewhere` where another page was faster. */
export function addMoves(
  store: Store,
  { id, from, moves, learner }: AddedMoves,
  now: Date,
): Outcome<Record<never, never>> {
  return store.connection.transaction((): Outcome<Record<never, never>> => {
    const kept = attemptAt(store, id);
    if (!kept.ok) return kept;
    if (kept.value.route.length !== from) return refuse("attempt-elsewhere");
    const route: readonly Recorded[] = [...(kept.value.route as readonly Recorded[]), ...moves];
    const { isOver, ...facts } = factsOfRoute(route);
    store.connection
      .prepare(
        `UPDATE attempts SET learner = :learner, minutes = :minutes, moves = :moves, over = :over, edited = :now, route = :route
           WHERE id = :id`,
      )
      .run({
        ...facts,
        id,
        learner,
        over: isOver ? 1 : 0,
        now: now.toISOString(),
        route: packed(JSON.stringify(route)),
      });
    return ok({});
  })();
}

/** Begins an exercise anew: its route goes, whoever works on it stays. Refuses as `openAttempt`. */
export function restartAttempt(store: Store, id: string, now: Date): Outcome<KeptAttempt> {
  store.connection
    .prepare(
      "UPDATE attempts SET minutes = 0, moves = 0, over = 0, edited = ?, route = ? WHERE id = ? AND removed IS NULL",
    )
    .run(now.toISOString(), packed("[]"), id);
  return openAttempt(store, id);
}

/** Moves work on an exercise to the bin, or with null for the moment back, and gives its row. Refuses `attempt-unknown`. */
export function moveAttempt({ connection }: Store, id: string, removed: Date | null): Outcome<AttemptRow> {
  const isThere = removed === null ? "removed IS NOT NULL" : "removed IS NULL";
  const row = connection
    .prepare(`UPDATE attempts SET removed = ? WHERE id = ? AND ${isThere} RETURNING ${ROW}`)
    .get(removed?.toISOString() ?? null, id);
  return row ? ok(rowOf(row)) : refuse("attempt-unknown");
}

/** Lets go for good of what went to the bin before a moment. For use within a transaction. */
export function emptyAttemptsBin(connection: Connection, before: string): void {
  connection.prepare("DELETE FROM attempts WHERE removed < ?").run(before);
}
