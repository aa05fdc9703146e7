import { type Outcome, ok } from "../../core/base/outcome.ts";
import { LIBRARY_NAMES } from "../../core/base/words/library.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { OpenedCircuit } from "../../schemas/calls.ts";
import { formatCircuit } from "../../schemas/circuit.ts";
import { readPackedFile } from "../files.ts";
import type { Packed } from "../pack/pack.ts";
import { benchOf, benchVersionOf } from "../store/benches.ts";
import { addCircuit, type Coming, circuitFrom, type Place } from "../store/circuits.ts";
import type { Store } from "../store/open.ts";
import { hashOfText } from "../store/packed.ts";
import { keepPicture } from "../store/pictures.ts";
import { noteOpened } from "../store/recent.ts";
import { circuitInVersion } from "../store/versions.ts";

/** Brings a circuit of the library to the bench and notes it. Refuses `version-damaged`. */
export function bringToBench(store: Store, place: Place, now: Date, known = false): Outcome<OpenedCircuit> {
  const circuit = circuitInVersion(store, place.key, place.version);
  if (!circuit.ok) return circuit;
  noteOpened(store, place.key, place.id, now);
  const { id, version, key } = place;
  const bench = benchOf(store, key);
  return ok({ id, version, circuit: circuit.value, bench, benchVersion: benchVersionOf(store, key), known });
}

/** Takes a new circuit into the library and brings it to the bench. */
export function bringNew(store: Store, circuit: Circuit, coming: Coming, now: Date): Outcome<OpenedCircuit> {
  return bringToBench(store, addCircuit(store, circuit, coming, now), now);
}

/**
 * Takes a circuit from a file into the library. A file that was brought in before is not taken again: the circuit it
 * became is opened, with what was done to it since.
 */
export function bringIn(store: Store, circuit: Circuit, now: Date): Outcome<OpenedCircuit> {
  const origin = hashOfText(formatCircuit(circuit));
  const known = circuitFrom(store, origin);
  if (known) return bringToBench(store, known, now, true);
  return bringNew(store, circuit, { name: LIBRARY_NAMES.brought, origin }, now);
}

/** The same with the pictures that the circuit shows; they are kept first, and both or neither. */
export function bringPacked(store: Store, { circuit, pictures }: Packed, now: Date): Outcome<OpenedCircuit> {
  return store.connection.transaction(() => {
    for (const file of pictures) keepPicture(store, file, now);
    return bringIn(store, circuit, now);
  })();
}

/** The same for a file on the disk, plain or packed with its pictures; refuses as reading it does. */
export async function bringFile(store: Store, path: string, now: Date): Promise<Outcome<OpenedCircuit>> {
  const packed = await readPackedFile(path);
  return packed.ok ? bringPacked(store, packed.value, now) : packed;
}
