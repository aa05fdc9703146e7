/** Pictures of printed pages, each kept once under the hash of its bytes, and the versions of circuits that name them. */
export const PICTURES_UPGRADE = {
  name: "002-pictures",
  sql: `
CREATE TABLE pictures (
  sha256 TEXT PRIMARY KEY,
  mime TEXT NOT NULL,
  width INTEGER NOT NULL,
  height INTEGER NOT NULL,
  -- when it was last brought in
  kept TEXT NOT NULL,
  bytes BLOB NOT NULL
) STRICT;

-- A version may name a picture that is not here, as where a plain circuit file came without its pictures.
CREATE TABLE pictured (
  circuit INTEGER NOT NULL,
  version INTEGER NOT NULL,
  sha256 TEXT NOT NULL,
  PRIMARY KEY (circuit, version, sha256),
  FOREIGN KEY (circuit, version) REFERENCES versions ON DELETE CASCADE
) STRICT, WITHOUT ROWID;
CREATE INDEX pictured_by_picture ON pictured (sha256);`,
} as const;
