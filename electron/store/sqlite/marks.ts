import type { KeptMark } from "../../../schemas/calls.ts";
import type { Store } from "./open.ts";

/** All marks, by learner and then in the order in which they were graded. */
export function listMarks({ connection }: Store): KeptMark[] {
  return connection
    .prepare("SELECT id, learner, exercise, mastered FROM marks ORDER BY learner, graded, id")
    .all()
    .map((row) => {
      const { mastered, ...rest } = row as Omit<KeptMark, "isMastered"> & { readonly mastered: number };
      return { ...rest, isMastered: mastered === 1 };
    });
}

/** Keeps marks, in one transaction; a hand-in that is graded again takes the place of what it was. */
export function keepMarks({ connection }: Store, marks: readonly KeptMark[], now: Date): void {
  const keep = connection.prepare(
    `INSERT INTO marks (id, learner, exercise, mastered, graded) VALUES (:id, :learner, :exercise, :mastered, :graded)
     ON CONFLICT (id) DO UPDATE SET learner = :learner, exercise = :exercise, mastered = :mastered`,
  );
  connection.transaction(() => {
    for (const { isMastered, ...mark } of marks)
      keep.run({ ...mark, mastered: isMastered ? 1 : 0, graded: now.toISOString() });
  })();
}

/** Forgets all that one learner showed. */
export function forgetMarks({ connection }: Store, learner: string): void {
  connection.prepare("DELETE FROM marks WHERE learner = ?").run(learner);
}
