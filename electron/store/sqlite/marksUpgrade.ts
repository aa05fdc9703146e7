/** What learners showed in hand-ins that were graded here: all that progress with a task list needs, and nothing of their routes. */
export const MARKS_UPGRADE = {
  name: "006-marks",
  sql: `
CREATE TABLE marks (
  -- last link of the hand-in's chain: no two are the same
  id TEXT PRIMARY KEY,
  learner TEXT NOT NULL,
  -- title of the exercise
  exercise TEXT NOT NULL,
  mastered INTEGER NOT NULL,
  graded TEXT NOT NULL
) STRICT;
CREATE INDEX marks_by_learner ON marks (learner);`,
} as const;
