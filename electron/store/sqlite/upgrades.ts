import type { Upgrade } from "../upgradeStep.ts";
import { ATTEMPTS_UPGRADE } from "./attemptsUpgrade.ts";
import { BESIDES_UPGRADE } from "./besidesUpgrade.ts";
import { JOBS_UPGRADE } from "./jobsUpgrade.ts";
import { MARKS_UPGRADE } from "./marksUpgrade.ts";
import { PICTURES_UPGRADE } from "./picturesUpgrade.ts";

/**
 * All upgrades in the order of their names. One that has been given out never changes: a mistake in it is put right by
 * the next. A new one needs a library of the form before it among the fixtures of the tests.
 */
export const UPGRADES: readonly Upgrade[] = [
  {
    name: "001-library",
    sql: `
CREATE TABLE circuits (
  key INTEGER PRIMARY KEY,
  id TEXT NOT NULL UNIQUE,
  title TEXT NOT NULL,
  vehicle TEXT NOT NULL,
  pages INTEGER NOT NULL,
  parts INTEGER NOT NULL,
  wires INTEGER NOT NULL,
  problems INTEGER NOT NULL,
  loose_ends INTEGER NOT NULL,
  version INTEGER NOT NULL,
  -- of the text of the present version, to tell an edit of the circuit from one of its bench
  hash TEXT NOT NULL,
  -- hash of the file it was brought in from, or null
  origin TEXT,
  made TEXT NOT NULL,
  edited TEXT NOT NULL,
  removed TEXT
) STRICT;
CREATE INDEX circuits_by_edit ON circuits (removed, edited DESC);
CREATE INDEX circuits_by_origin ON circuits (origin);

CREATE TABLE versions (
  circuit INTEGER NOT NULL REFERENCES circuits ON DELETE CASCADE,
  version INTEGER NOT NULL,
  name TEXT NOT NULL,
  saved TEXT NOT NULL,
  text BLOB NOT NULL,
  PRIMARY KEY (circuit, version)
) STRICT;

CREATE TABLE benches (
  circuit INTEGER PRIMARY KEY REFERENCES circuits ON DELETE CASCADE,
  saved TEXT NOT NULL,
  state BLOB NOT NULL
) STRICT;

CREATE TABLE recent (
  circuit INTEGER PRIMARY KEY REFERENCES circuits ON DELETE CASCADE,
  opened TEXT NOT NULL
) STRICT;

CREATE TABLE settings (name TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT;

CREATE VIRTUAL TABLE search USING fts5 (
  title, vehicle, words,
  content = '', contentless_delete = 1, prefix = '1 2', tokenize = 'unicode61 remove_diacritics 2'
);
INSERT INTO search (search, rank) VALUES ('rank', 'bm25(10.0, 5.0, 1.0)');`,
  },
  PICTURES_UPGRADE,
  {
    name: "003-bench-versions",
    // counts what was changed on the bench, so that one page does not write over another's
    sql: "ALTER TABLE benches ADD COLUMN version INTEGER NOT NULL DEFAULT 1;",
  },
  JOBS_UPGRADE,
  ATTEMPTS_UPGRADE,
  MARKS_UPGRADE,
  BESIDES_UPGRADE,
];
