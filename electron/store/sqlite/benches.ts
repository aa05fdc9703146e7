import { type Outcome, ok, refuse } from "../../../core/base/outcome.ts";
import type { BenchSave } from "../library.ts";
import { type LastKept, NOBODY } from "../newVersion.ts";
import { packed, unpacked } from "../packed.ts";
import type { Store } from "./open.ts";
import { personOf } from "./settings.ts";

/**
 * Keeps what stands on a circuit's bench beside the circuit, in place of what was kept, and gives the version that it is
 * now. Refuses `bench-changed-elsewhere` where another page kept something on it since; then nothing is kept.
 */
export function keepBench(
  store: Store,
  key: number,
  save: BenchSave,
  { page, circuitVersion }: { readonly page: string | undefined; readonly circuitVersion: number },
  now: Date,
): Outcome<number> {
  const { bench, benchVersion, isSight = false } = save;
  const kept = benchVersionOf(store, key);
  if (kept !== benchVersion) {
    // The same once more is no other page's: the answer to it was lost on the way.
    if (benchOf(store, key) === bench) return ok(kept);
    if (page === undefined || lastOfBench(store, key).page !== page) return refuse("bench-changed-elsewhere");
  }
  const next = isSight && kept > 0 ? kept : kept + 1;
  store.connection
    .prepare(
      "INSERT OR REPLACE INTO benches (circuit, saved, state, version, by, page, circuit_version) VALUES (?, ?, ?, ?, ?, ?, ?)",
    )
    .run(key, now.toISOString(), packed(bench), next, personOf(store), page ?? null, circuitVersion);
  return ok(next);
}

/** What stood on a circuit's bench; null where nothing was kept, or where its bytes changed on the disk. */
export function benchOf({ connection }: Store, key: number): string | null {
  const state = connection.prepare("SELECT state FROM benches WHERE circuit = ?").pluck().get(key) as
    | Buffer
    | undefined;
  return state ? unpacked(state) : null;
}

/** Version of what stands on a circuit's bench; it counts from 1, and 0 is a bench of which nothing was kept. */
export function benchVersionOf({ connection }: Store, key: number): number {
  const version = connection.prepare("SELECT version FROM benches WHERE circuit = ?").pluck().get(key);
  return (version as number | undefined) ?? 0;
}

/** Notes that what stands on a bench is of this version of its circuit. */
export function noteBenchOf({ connection }: Store, key: number, circuitVersion: number): void {
  connection.prepare("UPDATE benches SET circuit_version = ? WHERE circuit = ?").run(circuitVersion, key);
}

/** Version of the circuit that a bench was kept with; null where that is not known. */
export function circuitVersionOf({ connection }: Store, key: number): number | null {
  const version = connection.prepare("SELECT circuit_version FROM benches WHERE circuit = ?").pluck().get(key);
  return (version as number | null | undefined) ?? null;
}

/** Who kept the bench of a circuit last, when, and from which page. */
export function lastOfBench({ connection }: Store, key: number): LastKept {
  const row = connection.prepare("SELECT by, saved, page FROM benches WHERE circuit = ?").get(key);
  return (row as LastKept | undefined) ?? NOBODY;
}
