import { LIBRARY_NAMES } from "../../core/base/words/library.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Job } from "../../core/diagnose/job.ts";
import { formatCircuit } from "../../schemas/circuit.ts";
import type { BenchKept, BenchSave, Save } from "./library.ts";
import { hashOfText } from "./packed.ts";

/** What a page sends to be kept; the circuit is null where it did not change, the bench where it stays as it is. */
export interface Sent {
  /** Version of the circuit that it was made on. */
  readonly version: number;
  readonly circuit: Circuit | null;
  readonly name: string;
  readonly bench: BenchSave | null;
  readonly jobs: readonly Job[];
  readonly page: string | undefined;
}

/** An edit of a circuit as it was sent. */
export function sentEdit({ version, circuit, name, bench, jobs = [], page }: Save): Sent {
  return { version, circuit, name, bench: bench ?? null, jobs, page };
}

/** What stands on a bench, as it was sent. */
export function sentBench({ version, jobs, page, ...bench }: BenchKept): Sent {
  return { version, circuit: null, name: LIBRARY_NAMES.beside, bench, jobs, page };
}

/** A circuit as it stands in the library, and the mark of the page that made its newest version. */
export interface Stands {
  readonly version: number;
  readonly hash: string;
  readonly isRemoved: boolean;
  readonly page: string | null;
}

/**
 * Whether what was sent goes on from how its circuit stands, so that nothing of anybody's is written over: it was made on the
 * newest version, or its page made that, though the answer was lost, or it is the same. A bench stays the person's own where
 * somebody else drew on the circuit; only a look gives way to that.
 */
export function goesOn(sent: Sent, { version, hash, isRemoved, page }: Stands): boolean {
  if (isRemoved) return false;
  if (version === sent.version || (sent.page !== undefined && page === sent.page)) return true;
  if (sent.circuit === null) return !sent.bench?.isSight && sent.version < version;
  return hashOfText(formatCircuit(sent.circuit)) === hash;
}
