import { type Outcome, ok, refuse } from "../../../core/base/outcome.ts";
import { formatCircuit } from "../../../schemas/circuit.ts";
import type { BenchKept, ChangedMeanwhile, Save, Standing } from "../library.ts";
import { hashOfText } from "../packed.ts";
import { goesOn, type Sent, sentBench, sentEdit } from "../sent.ts";
import { benchVersionOf, keepBench, lastOfBench, noteBenchOf } from "./benches.ts";
import { addCircuit, branchOf, changeCircuit, type Place, placeAnywhere } from "./circuits.ts";
import { keepJobs } from "./jobs.ts";
import type { Store } from "./open.ts";
import { noteOpened, openCircuitId } from "./recent.ts";
import { circuitInVersion, lastVersion } from "./versions.ts";

/** Keeps an edit as `CircuitShelf.save` says, in one transaction. */
export function saveCircuit(store: Store, id: string, save: Save, now: Date): Outcome<Standing> {
  return store.connection.transaction(() => keepSent(store, id, sentEdit(save), now))();
}

/** Keeps what stands on a bench whose circuit did not change, as `BenchShelf.save` says, in one transaction. */
export function saveBench(store: Store, id: string, save: BenchKept, now: Date): Outcome<Standing> {
  return store.connection.transaction(() => keepSent(store, id, sentBench(save), now))();
}

function keepSent(store: Store, id: string, sent: Sent, now: Date): Outcome<Standing> {
  const place = placeAnywhere(store, id);
  if (!place.ok) return place;
  const { key, version, isRemoved } = place.value;
  const last = lastVersion(store, key, version);
  const bench = goesOn(sent, { ...place.value, page: last.page }) ? keptBench(store, place.value, sent, now) : null;
  if (bench?.ok) return ok(keepHere(store, place.value, sent, bench.value, now));
  if (sent.bench?.isSight) return bench ?? refuse(isRemoved ? "circuit-unknown" : "circuit-changed-elsewhere");
  const { saved } = bench ? lastOfBench(store, key) : last;
  // Nobody else has this library.
  return keepBeside(store, place.value, sent, { by: "", saved, isRemoved }, now);
}

function keptBench(store: Store, { key, version }: Place, sent: Sent, now: Date): Outcome<number> {
  const { bench, circuit, page } = sent;
  if (!bench) return ok(benchVersionOf(store, key));
  return keepBench(store, key, bench, { page, circuitVersion: circuit ? version : sent.version }, now);
}

/** Keeps what was sent as the newest of its circuit; one that did not change keeps its version. */
function keepHere(store: Store, place: Place, sent: Sent, benchVersion: number, now: Date): Standing {
  const { id, key, version, hash } = place;
  const { circuit } = sent;
  const stands = { id, version, benchVersion, beside: null };
  keepJobs(store, key, () => (circuit ? ok(circuit) : circuitInVersion(store, key, version)), sent.jobs, now);
  // The page goes on from the version that it has.
  if (!circuit) return { ...stands, version: sent.version };
  const text = formatCircuit(circuit);
  if (hashOfText(text) === hash) return stands;
  changeCircuit(store, place, { circuit, text, name: sent.name, page: sent.page }, now);
  if (sent.bench) noteBenchOf(store, key, version + 1);
  return { ...stands, version: version + 1 };
}

/**
 * Keeps what was sent beside a circuit that is no longer what it was made from: on the circuit that this page had kept beside
 * it before, where the answer to that was lost, else as a new one. Refuses as reading the version that it was made from.
 */
function keepBeside(store: Store, place: Place, sent: Sent, meanwhile: ChangedMeanwhile, now: Date): Outcome<Standing> {
  const own = sent.page === undefined ? null : branchOf(store, place.key, sent.page);
  if (own) {
    const bench = sent.bench && { ...sent.bench, benchVersion: benchVersionOf(store, own.key) };
    const again = keepSent(store, own.id, { ...sent, version: own.version, bench }, now);
    return again.ok ? ok({ ...again.value, beside: meanwhile }) : again;
  }
  const circuit = sent.circuit ? ok(sent.circuit) : circuitInVersion(store, place.key, sent.version);
  if (!circuit.ok) return circuit;
  const coming = { name: sent.name, bench: sent.bench?.bench, jobs: sent.jobs, page: sent.page, beside: place.key };
  const { id, key, version } = addCircuit(store, circuit.value, coming, now);
  if (openCircuitId(store) === place.id) noteOpened(store, key, id, now);
  return ok({ id, version, benchVersion: benchVersionOf(store, key), beside: meanwhile });
}
