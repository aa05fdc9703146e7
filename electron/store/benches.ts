import type { Store } from "./open.ts";
import { packed, unpacked } from "./packed.ts";

/** Keeps what stands on a circuit's bench beside the circuit, in place of what was kept. */
export function keepBench({ connection }: Store, key: number, bench: string, now: Date): void {
  connection
    .prepare("INSERT OR REPLACE INTO benches (circuit, saved, state) VALUES (?, ?, ?)")
    .run(key, now.toISOString(), packed(bench));
}

/** What stood on a circuit's bench; null where nothing was kept, or where its bytes changed on the disk. */
export function benchOf({ connection }: Store, key: number): string | null {
  const state = connection.prepare("SELECT state FROM benches WHERE circuit = ?").pluck().get(key) as
    | Buffer
    | undefined;
  return state ? unpacked(state) : null;
}
