import { type Outcome, ok, refuse } from "../../../core/base/outcome.ts";
import type { BenchKept, Standing } from "../library.ts";
import { keepBench } from "./benches.ts";
import { placeOf } from "./circuits.ts";
import { keepJobs } from "./jobs.ts";
import type { Store } from "./open.ts";
import { circuitInVersion } from "./versions.ts";

/**
 * Keeps what stands on a bench whose circuit did not change, and its jobs, in one transaction, and gives the versions that
 * stand now. Refuses `circuit-unknown`, `circuit-changed-elsewhere`, and as `keepBench`; a circuit that cannot be read any
 * more keeps its jobs without the label of their complaint.
 */
export function saveBench(
  store: Store,
  id: string,
  { version, jobs, ...save }: BenchKept,
  now: Date,
): Outcome<Standing> {
  return store.connection.transaction((): Outcome<Standing> => {
    const place = placeOf(store, id);
    if (!place.ok) return place;
    const { key } = place.value;
    if (place.value.version !== version) return refuse("circuit-changed-elsewhere");
    const kept = keepBench(store, key, save, now);
    if (!kept.ok) return kept;
    keepJobs(store, key, () => circuitInVersion(store, key, version), jobs, now);
    return ok({ version, benchVersion: kept.value });
  })();
}
