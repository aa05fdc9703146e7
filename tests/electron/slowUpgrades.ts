import type { Upgrade } from "../../electron/store/upgradeStep.ts";

/** Rows that a slow upgrade writes: long enough to be killed in the middle of it. */
export const SLOW_ROWS = 60_000;

const rows = `WITH RECURSIVE counted (n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM counted WHERE n < ${SLOW_ROWS})`;

/** Upgrades after the present ones that take their time, each resting on the one before it. */
export const SLOW: readonly Upgrade[] = ["901-first", "902-second", "903-third"].map((name, at) => ({
  name,
  sql: `CREATE TABLE slow_${at} (n INTEGER NOT NULL, words TEXT NOT NULL) STRICT;
${rows} INSERT INTO slow_${at} SELECT n, 'row ' || n FROM counted;
CREATE INDEX slow_${at}_by_words ON slow_${at} (words);
${at === 0 ? "" : `DROP TABLE slow_${at - 1};`}`,
}));
