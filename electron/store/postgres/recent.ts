import type { OnBench } from "../library.ts";
import type { Session } from "./session.ts";
import { keepNote, noteOf } from "./settings.ts";
import { sql } from "./sql.ts";

/** Which circuit is on this person's bench, or which exercise, so that the next start brings it back. */
const OPEN = "open-circuit";
const ATTEMPT = "open-attempt";

/** Notes that a circuit was opened now and is the one on the bench. */
export async function noteOpened(session: Session, key: number, id: string, now: Date): Promise<void> {
  await session.run(sql`
    INSERT INTO recent (circuit, person, opened) VALUES (${key}, ${session.person}, ${now})
    ON CONFLICT (circuit, person) DO UPDATE SET opened = excluded.opened`);
  await keepNote(session, OPEN, id);
  await keepNote(session, ATTEMPT, null);
}

/** Notes that an exercise is on the bench, and no circuit. */
export async function noteAttempt(session: Session, id: string): Promise<void> {
  await keepNote(session, OPEN, null);
  await keepNote(session, ATTEMPT, id);
}

/** Notes that nothing is on the bench. */
export async function noteClosed(session: Session): Promise<void> {
  await keepNote(session, OPEN, null);
  await keepNote(session, ATTEMPT, null);
}

/** What is on the bench; null where nothing is or it is in the bin. */
export async function onBench(session: Session): Promise<OnBench> {
  const circuit = await noteOf(session, OPEN);
  const attempt = await noteOf(session, ATTEMPT);
  const there = await session.first<{ readonly circuit: boolean; readonly attempt: boolean }>(sql`
    SELECT EXISTS (SELECT 1 FROM circuits WHERE id = ${textOf(circuit)} AND removed IS NULL) AS circuit,
      EXISTS (SELECT 1 FROM exercises e LEFT JOIN attempts a ON a.exercise = e.id AND a.person = ${session.person}
        WHERE e.id = ${textOf(attempt)} AND a.removed IS NULL) AS attempt`);
  return {
    circuit: there?.circuit ? textOf(circuit) : null,
    attempt: there?.attempt ? textOf(attempt) : null,
  };
}

function textOf(note: unknown): string | null {
  return typeof note === "string" ? note : null;
}
