import { type Outcome, ok } from "../../../core/base/outcome.ts";
import { LIBRARY_NAMES } from "../../../core/base/words/library.ts";
import type { Circuit } from "../../../core/circuit/circuit.ts";
import type { OpenedCircuit } from "../../../schemas/calls.ts";
import { formatCircuit } from "../../../schemas/circuit.ts";
import type { BroughtFile, Coming } from "../library.ts";
import { hashOfText } from "../packed.ts";
import { benchOf, benchVersionOf, circuitVersionOf } from "./benches.ts";
import { addCircuit, begunBy, circuitFrom, type Place, placeOf } from "./circuits.ts";
import type { Store } from "./open.ts";
import { keepPicture } from "./pictures.ts";
import { noteOpened } from "./recent.ts";
import { saveCircuit } from "./save.ts";
import { circuitInVersion } from "./versions.ts";

/** Brings the circuit of this id to the bench and notes it. Refuses `circuit-unknown` and `version-damaged`. */
export function openCircuit(store: Store, id: string, now: Date): Outcome<OpenedCircuit> {
  const place = placeOf(store, id);
  return place.ok ? bringToBench(store, place.value, now) : place;
}

/** The same without a note of it, which a full disk has no room for. */
export function openUnnoted(store: Store, id: string): Outcome<OpenedCircuit> {
  const place = placeOf(store, id);
  return place.ok ? standingOnBench(store, place.value, false) : place;
}

/** Brings a circuit of the library to the bench and notes it. Refuses `version-damaged`. */
function bringToBench(store: Store, place: Place, now: Date, known = false): Outcome<OpenedCircuit> {
  const opened = standingOnBench(store, place, known);
  if (opened.ok) noteOpened(store, place.key, place.id, now);
  return opened;
}

function standingOnBench(store: Store, { id, version, key }: Place, known: boolean): Outcome<OpenedCircuit> {
  const circuit = circuitInVersion(store, key, version);
  if (!circuit.ok) return circuit;
  const isBenchOlder = (circuitVersionOf(store, key) ?? version) !== version;
  const stands = { bench: benchOf(store, key), benchVersion: benchVersionOf(store, key), isBenchOlder };
  return ok({ id, version, circuit: circuit.value, ...stands, known });
}

/** Takes a new circuit into the library and brings it to the bench; what a page sends once more goes on what it began. */
export function bringNew(store: Store, circuit: Circuit, coming: Coming, now: Date): Outcome<OpenedCircuit> {
  const { page, name, bench, jobs = [] } = coming;
  const begun = page === undefined ? null : begunBy(store, page);
  if (begun && page !== undefined) {
    const stands = bench ? { bench: { bench, benchVersion: benchVersionOf(store, begun.key) } } : {};
    const kept = saveCircuit(store, begun.id, { version: begun.version, circuit, name, jobs, page, ...stands }, now);
    return kept.ok ? openCircuit(store, kept.value.id, now) : kept;
  }
  return bringToBench(store, addCircuit(store, circuit, coming, now), now);
}

/** Takes a circuit from a file into the library with its pictures, which are kept first; one that is known is opened. */
export function bringIn(store: Store, { circuit, pictures }: BroughtFile, now: Date): Outcome<OpenedCircuit> {
  for (const file of pictures) keepPicture(store, file, now);
  const origin = hashOfText(formatCircuit(circuit));
  const known = circuitFrom(store, origin);
  if (known) return bringToBench(store, known, now, true);
  const place = addCircuit(store, circuit, { name: LIBRARY_NAMES.brought, origin }, now);
  return bringToBench(store, place, now);
}
