import type { Store } from "./open.ts";
import { keepNote, noteOf } from "./settings.ts";

/** Which circuit is on the bench, or which exercise, so that the next start brings it back. */
const OPEN = "open-circuit";
const ATTEMPT = "open-attempt";

/** Notes that a circuit was opened now and is the one on the bench. */
export function noteOpened(store: Store, key: number, id: string, now: Date): void {
  store.connection.prepare("INSERT OR REPLACE INTO recent (circuit, opened) VALUES (?, ?)").run(key, now.toISOString());
  keepNote(store, OPEN, id);
  keepNote(store, ATTEMPT, null);
}

/** Notes that an exercise is on the bench, and no circuit. */
export function noteAttempt(store: Store, id: string): void {
  keepNote(store, OPEN, null);
  keepNote(store, ATTEMPT, id);
}

/** Notes that nothing is on the bench. */
export function noteClosed(store: Store): void {
  keepNote(store, OPEN, null);
  keepNote(store, ATTEMPT, null);
}

/** The exercise that was on the bench last, or null where there was none or it is in the bin. */
export function openAttemptId(store: Store): string | null {
  const id = noteOf(store, ATTEMPT);
  const isThere = store.connection.prepare("SELECT 1 FROM attempts WHERE id = ? AND removed IS NULL").get(id);
  return isThere ? (id as string) : null;
}

/** The circuit that was on the bench last, or null where there was none or it is in the bin. */
export function openCircuitId(store: Store): string | null {
  const id = noteOf(store, OPEN);
  const isThere = store.connection.prepare("SELECT 1 FROM circuits WHERE id = ? AND removed IS NULL").get(id);
  return isThere ? (id as string) : null;
}
