import type { Upgrade } from "../upgradeStep.ts";

/**
 * All upgrades in the order of their names. One that has been given out never changes: a mistake in it is put right by the
 * next. Texts are compared sign by sign, as SQLite does.
 */
export const UPGRADES: readonly Upgrade[] = [
  {
    name: "001-library",
    sql: `
CREATE TABLE persons (
  id uuid PRIMARY KEY,
  name text NOT NULL,
  seen timestamptz NOT NULL
);

CREATE TABLE circuits (
  key bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
  id text COLLATE "C" NOT NULL UNIQUE,
  title text COLLATE "C" NOT NULL,
  vehicle text NOT NULL,
  pages integer NOT NULL,
  parts integer NOT NULL,
  wires integer NOT NULL,
  problems integer NOT NULL,
  loose_ends integer NOT NULL,
  version integer NOT NULL,
  -- of the text of the present version, to tell an edit of the circuit from one of its bench
  hash text NOT NULL,
  -- hash of the file it was brought in from, or null
  origin text,
  made timestamptz NOT NULL,
  edited timestamptz NOT NULL,
  removed timestamptz,
  -- the circuit that it was kept beside, since both were changed at once, and who kept it
  beside bigint REFERENCES circuits ON DELETE SET NULL,
  beside_by text NOT NULL DEFAULT '',
  -- what it is found by: A its title, B its vehicle, D everything else
  search tsvector NOT NULL
);
CREATE INDEX circuits_by_edit ON circuits (edited DESC, key DESC);
CREATE INDEX circuits_by_origin ON circuits (origin);
CREATE INDEX circuits_by_title ON circuits (title);
CREATE INDEX circuits_by_beside ON circuits (beside);
CREATE INDEX circuits_by_words ON circuits USING gin (search);

CREATE TABLE versions (
  circuit bigint NOT NULL REFERENCES circuits ON DELETE CASCADE,
  version integer NOT NULL,
  name text NOT NULL,
  saved timestamptz NOT NULL,
  by text NOT NULL,
  -- mark of the page that sent it: a save whose answer was lost is told by it
  page text,
  text bytea NOT NULL,
  PRIMARY KEY (circuit, version)
);
ALTER TABLE versions ALTER COLUMN text SET STORAGE EXTERNAL;
CREATE INDEX versions_by_page ON versions (page) WHERE page IS NOT NULL;

-- Each person has a bench of their own on a circuit that all share.
CREATE TABLE benches (
  circuit bigint NOT NULL REFERENCES circuits ON DELETE CASCADE,
  person uuid NOT NULL REFERENCES persons ON DELETE CASCADE,
  -- of the circuit when it was kept
  circuit_version integer NOT NULL,
  version integer NOT NULL,
  saved timestamptz NOT NULL,
  page text,
  state bytea NOT NULL,
  PRIMARY KEY (circuit, person)
);

CREATE TABLE recent (
  circuit bigint NOT NULL REFERENCES circuits ON DELETE CASCADE,
  person uuid NOT NULL REFERENCES persons ON DELETE CASCADE,
  opened timestamptz NOT NULL,
  PRIMARY KEY (circuit, person)
);

CREATE TABLE settings (
  person uuid NOT NULL REFERENCES persons ON DELETE CASCADE,
  name text NOT NULL,
  value text NOT NULL,
  PRIMARY KEY (person, name)
);

CREATE TABLE jobs (
  key bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
  circuit bigint NOT NULL REFERENCES circuits ON DELETE CASCADE,
  -- a circuit that was kept beside another has the job of its bench too
  id text NOT NULL,
  vehicle text NOT NULL,
  told text NOT NULL,
  complaint text NOT NULL,
  readings integer NOT NULL,
  suspect text,
  share double precision,
  solved boolean NOT NULL,
  made timestamptz NOT NULL,
  edited timestamptz NOT NULL,
  removed timestamptz,
  state bytea NOT NULL,
  -- A the vehicle, B what was told, D everything else
  search tsvector NOT NULL,
  UNIQUE (circuit, id)
);
CREATE INDEX jobs_by_edit ON jobs (solved, edited DESC, key DESC);
CREATE INDEX jobs_by_words ON jobs USING gin (search);

CREATE TABLE exercises (
  key bigint GENERATED ALWAYS AS IDENTITY UNIQUE,
  -- hash of what the exercise says and of what is sealed in it
  id text COLLATE "C" PRIMARY KEY,
  title text NOT NULL,
  -- label of the function check that is complained of
  complaint text NOT NULL,
  made timestamptz NOT NULL,
  -- as sealed as it came: nothing in it tells the fault
  file bytea NOT NULL
);

-- Each person's own work on an exercise that all share.
CREATE TABLE attempts (
  person uuid NOT NULL REFERENCES persons ON DELETE CASCADE,
  exercise text COLLATE "C" NOT NULL REFERENCES exercises ON DELETE CASCADE,
  learner text NOT NULL,
  minutes double precision NOT NULL,
  moves integer NOT NULL,
  over boolean NOT NULL,
  made timestamptz NOT NULL,
  edited timestamptz NOT NULL,
  removed timestamptz,
  -- let go of for good: the exercise is not shown to this person any more
  gone boolean NOT NULL DEFAULT false,
  route bytea NOT NULL,
  PRIMARY KEY (person, exercise)
);
CREATE INDEX attempts_by_exercise ON attempts (exercise);

CREATE TABLE marks (
  -- last link of the hand-in's chain: no two are the same
  id text PRIMARY KEY,
  learner text COLLATE "C" NOT NULL,
  exercise text NOT NULL,
  mastered boolean NOT NULL,
  graded timestamptz NOT NULL
);
CREATE INDEX marks_by_learner ON marks (learner);

CREATE TABLE pictures (
  sha256 text COLLATE "C" PRIMARY KEY,
  mime text NOT NULL,
  width integer NOT NULL,
  height integer NOT NULL,
  -- when it was last brought in
  kept timestamptz NOT NULL,
  bytes bytea NOT NULL
);
ALTER TABLE pictures ALTER COLUMN bytes SET STORAGE EXTERNAL;

-- A version may name a picture that is not here, as where a plain circuit file came without its pictures.
CREATE TABLE pictured (
  circuit bigint NOT NULL,
  version integer NOT NULL,
  sha256 text COLLATE "C" NOT NULL,
  PRIMARY KEY (circuit, version, sha256),
  FOREIGN KEY (circuit, version) REFERENCES versions ON DELETE CASCADE
);
CREATE INDEX pictured_by_picture ON pictured (sha256);

-- One row: the day on which what is old was last let go of.
CREATE TABLE chores (done date NOT NULL);
INSERT INTO chores VALUES ('-infinity');`,
  },
];
