import { type Outcome, ok, refuse } from "../../../core/base/outcome.ts";
import type { BenchSave } from "../library.ts";
import { type LastKept, NOBODY } from "../newVersion.ts";
import { packed, unpacked } from "../packed.ts";
import type { Session } from "./session.ts";
import { sql } from "./sql.ts";

/** What stands on this person's bench of a circuit. */
export interface KeptBench extends LastKept {
  /** Null where its bytes changed on the disk. */
  readonly bench: string | null;
  /** Counts from 1; 0 is a bench of which nothing was kept. */
  readonly version: number;
  /** Version of the circuit when it was kept. */
  readonly circuitVersion: number;
}

const NOTHING: KeptBench = { ...NOBODY, bench: null, version: 0, circuitVersion: 0 };

/** What stands on this person's bench of a circuit; version 0 where nothing does. */
export async function benchOf({ person, ...session }: Session, key: number): Promise<KeptBench> {
  const row = await session.first<Omit<KeptBench, "bench"> & { readonly state: Buffer }>(sql`
    SELECT version, circuit_version AS "circuitVersion", saved, page, state, '' AS by FROM benches
      WHERE circuit = ${key} AND person = ${person}`);
  if (!row) return NOTHING;
  const { state, ...rest } = row;
  return { ...rest, bench: unpacked(state) };
}

/**
 * Keeps what stands on a circuit's bench in place of what was kept, and gives the version that it is now. Refuses
 * `bench-changed-elsewhere` where another page of this person kept something on it since; then nothing is kept.
 */
export async function keepBench(
  session: Session,
  key: number,
  { bench, benchVersion, isSight = false }: BenchSave,
  { page, circuitVersion }: { readonly page: string | undefined; readonly circuitVersion: number },
  now: Date,
): Promise<Outcome<number>> {
  const kept = await benchOf(session, key);
  if (kept.version !== benchVersion) {
    // The same once more is no other page's: the answer to it was lost on the way.
    if (kept.bench === bench) return ok(kept.version);
    if (page === undefined || kept.page !== page) return refuse("bench-changed-elsewhere");
  }
  const next = isSight && kept.version > 0 ? kept.version : kept.version + 1;
  await session.run(sql`
    INSERT INTO benches (circuit, person, circuit_version, version, saved, page, state)
      VALUES (${key}, ${session.person}, ${circuitVersion}, ${next}, ${now}, ${page ?? null}, ${packed(bench)})
    ON CONFLICT (circuit, person) DO UPDATE SET circuit_version = excluded.circuit_version, version = excluded.version,
      saved = excluded.saved, page = excluded.page, state = excluded.state`);
  return ok(next);
}

/** Notes that what stands on this person's bench is of this version of its circuit. */
export async function noteBenchOf(session: Session, key: number, circuitVersion: number): Promise<void> {
  await session.run(sql`
    UPDATE benches SET circuit_version = ${circuitVersion} WHERE circuit = ${key} AND person = ${session.person}`);
}
