import type { KeptMark } from "../../../schemas/calls.ts";
import type { Session } from "./session.ts";
import { sql } from "./sql.ts";

/** All marks, by learner and then in the order in which they were graded. */
export function listMarks(session: Session): Promise<KeptMark[]> {
  return session.all(sql`
    SELECT id, learner, exercise, mastered AS "isMastered" FROM marks ORDER BY learner, graded, id COLLATE "C"`);
}

/** Keeps marks; a hand-in that is graded again takes the place of what it was. */
export async function keepMarks(session: Session, marks: readonly KeptMark[], now: Date): Promise<void> {
  for (const { id, learner, exercise, isMastered } of marks)
    await session.run(sql`
      INSERT INTO marks (id, learner, exercise, mastered, graded) VALUES (${id}, ${learner}, ${exercise}, ${isMastered}, ${now})
      ON CONFLICT (id) DO UPDATE SET learner = excluded.learner, exercise = excluded.exercise, mastered = excluded.mastered`);
}

/** Forgets all that one learner showed. */
export async function forgetMarks(session: Session, learner: string): Promise<void> {
  await session.run(sql`DELETE FROM marks WHERE learner = ${learner}`);
}
