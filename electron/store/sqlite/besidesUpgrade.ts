/**
 * What tells two who change one circuit at once apart: who made a version and from which page, and which circuits were kept
 * beside another so that neither is written over.
 */
export const BESIDES_UPGRADE = {
  name: "007-besides",
  sql: `
ALTER TABLE versions ADD COLUMN by TEXT NOT NULL DEFAULT '';
-- mark of the page that sent it: a save whose answer was lost is told by it
ALTER TABLE versions ADD COLUMN page TEXT;
CREATE INDEX versions_by_page ON versions (page) WHERE page IS NOT NULL;
ALTER TABLE benches ADD COLUMN by TEXT NOT NULL DEFAULT '';
ALTER TABLE benches ADD COLUMN page TEXT;
-- version of the circuit when it was kept; null where that is not known
ALTER TABLE benches ADD COLUMN circuit_version INTEGER;
ALTER TABLE circuits ADD COLUMN beside INTEGER REFERENCES circuits ON DELETE SET NULL;
-- who it was kept beside for
ALTER TABLE circuits ADD COLUMN beside_by TEXT NOT NULL DEFAULT '';
CREATE INDEX circuits_by_beside ON circuits (beside);`,
} as const;
