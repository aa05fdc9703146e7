/** Jobs, each on its circuit, and what they are found by. A bench's own job is here too, as it stands on the bench. */
export const JOBS_UPGRADE = {
  name: "004-jobs",
  sql: `
CREATE TABLE jobs (
  key INTEGER PRIMARY KEY,
  circuit INTEGER NOT NULL REFERENCES circuits ON DELETE CASCADE,
  -- a copy of a circuit has the job of its bench too
  id TEXT NOT NULL,
  vehicle TEXT NOT NULL,
  told TEXT NOT NULL,
  -- label of the function check that is complained of, or empty
  complaint TEXT NOT NULL,
  readings INTEGER NOT NULL,
  suspect TEXT,
  share REAL,
  solved INTEGER NOT NULL,
  made TEXT NOT NULL,
  edited TEXT NOT NULL,
  removed TEXT,
  state BLOB NOT NULL,
  UNIQUE (circuit, id)
) STRICT;
CREATE INDEX jobs_by_edit ON jobs (removed, solved, edited DESC);

CREATE VIRTUAL TABLE job_search USING fts5 (
  vehicle, told, words,
  content = '', contentless_delete = 1, prefix = '1 2', tokenize = 'unicode61 remove_diacritics 2'
);
INSERT INTO job_search (job_search, rank) VALUES ('rank', 'bm25(10.0, 5.0, 1.0)');`,
} as const;
