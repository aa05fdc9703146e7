import { type Outcome, ok, refuse } from "../../../core/base/outcome.ts";
import type { Upgrade } from "../upgradeStep.ts";
import { SCHEMA, type Server } from "./server.ts";
import { UPGRADES } from "./upgrades.ts";

/** Number of the lock under which upgrades are made: two programs that start at once go one after the other. */
const LOCK = 1_464_226_888;

/**
 * Brings the tables on a server to their present form, whole or not at all. Refuses `store-newer` where a newer program wrote
 * them; then nothing was changed. Throws what the server says.
 */
export function upgraded(server: Server, now: Date, known: readonly Upgrade[] = UPGRADES): Promise<Outcome<null>> {
  return server.plainly(async (run) => {
    await run("SELECT pg_advisory_xact_lock($1)", [LOCK]);
    const [there] = await run("SELECT to_regclass($1) AS upgrades", [`${SCHEMA}.upgrades`]);
    if (there?.upgrades === null) {
      await run(`CREATE SCHEMA IF NOT EXISTS ${SCHEMA}`);
      await run('CREATE TABLE upgrades (name text COLLATE "C" PRIMARY KEY, applied timestamptz NOT NULL)');
    }
    const applied = (await run("SELECT name FROM upgrades ORDER BY name")).map(({ name }) => String(name));
    if (applied.some((name, index) => known[index]?.name !== name))
      return refuse("store-newer", { newest: applied.at(-1)! });
    for (const { name, sql } of known.slice(applied.length)) {
      await run(sql);
      await run("INSERT INTO upgrades VALUES ($1, $2)", [name, now]);
    }
    return ok(null);
  });
}
