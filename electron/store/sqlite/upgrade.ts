import { type Outcome, ok, refuse } from "../../../core/base/outcome.ts";
import type { Upgrade } from "../upgradeStep.ts";
import type { Connection } from "./connect.ts";

/**
 * The upgrades that a database still needs, in order. Refuses `store-newer` where those it has are not the first of
 * those known: then a newer program wrote it, and nothing may be guessed.
 */
export function pendingUpgrades(connection: Connection, known: readonly Upgrade[]): Outcome<readonly Upgrade[]> {
  const applied = appliedUpgrades(connection);
  const stranger = applied.find((name, index) => known[index]?.name !== name);
  if (stranger !== undefined) return refuse("store-newer", { newest: applied.at(-1)! });
  return ok(known.slice(applied.length));
}

function appliedUpgrades(connection: Connection): readonly string[] {
  const hasTable = connection.prepare("SELECT 1 FROM sqlite_schema WHERE name = 'upgrades'").get();
  if (!hasTable) return [];
  return connection.prepare("SELECT name FROM upgrades ORDER BY name").pluck().all() as string[];
}

/** Applies upgrades one by one, each whole or not at all. */
export function applyUpgrades(connection: Connection, upgrades: readonly Upgrade[], now: Date): void {
  for (const { name, sql } of upgrades) {
    connection.transaction(() => {
      connection.exec("CREATE TABLE IF NOT EXISTS upgrades (name TEXT PRIMARY KEY, applied TEXT NOT NULL) STRICT");
      connection.exec(sql);
      connection.prepare("INSERT INTO upgrades VALUES (?, ?)").run(name, now.toISOString());
    })();
  }
}
