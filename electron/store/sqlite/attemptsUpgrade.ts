/** Exercises that a learner works on: the file as sealed as it came, and the route. Nothing in it tells the fault. */
export const ATTEMPTS_UPGRADE = {
  name: "005-attempts",
  sql: `
CREATE TABLE attempts (
  key INTEGER PRIMARY KEY,
  -- hash of what the exercise says and of what is sealed in it
  id TEXT NOT NULL UNIQUE,
  title TEXT NOT NULL,
  -- label of the function check that is complained of
  complaint TEXT NOT NULL,
  learner TEXT NOT NULL,
  minutes REAL NOT NULL,
  moves INTEGER NOT NULL,
  over INTEGER NOT NULL,
  made TEXT NOT NULL,
  edited TEXT NOT NULL,
  removed TEXT,
  file BLOB NOT NULL,
  route BLOB NOT NULL
) STRICT;
CREATE INDEX attempts_by_edit ON attempts (removed, over, edited DESC);`,
} as const;
