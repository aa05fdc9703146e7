import { type Outcome, ok } from "../../../core/base/outcome.ts";
import { LIBRARY_NAMES } from "../../../core/base/words/library.ts";
import type { Circuit } from "../../../core/circuit/circuit.ts";
import type { CircuitRow } from "../../../schemas/calls.ts";
import { copyTitles } from "../copyTitles.ts";
import type { Where } from "../library.ts";
import { benchOf } from "./benches.ts";
import { addCircuit, eraseCircuit, isTitleTaken, markRemoved, placeOf } from "./circuits.ts";
import { circuitRow } from "./list.ts";
import type { Store } from "./open.ts";
import { saveCircuit } from "./save.ts";
import { circuitInVersion } from "./versions.ts";

/** A circuit as it is now, and where it is. */
interface Found {
  readonly circuit: Circuit;
  readonly key: number;
  readonly version: number;
}

/** The circuit of this id as it is now. Refuses `circuit-unknown` and `version-damaged`. */
export function circuitOf(store: Store, id: string): Outcome<Found> {
  const place = placeOf(store, id);
  if (!place.ok) return place;
  const { key, version } = place.value;
  const circuit = circuitInVersion(store, key, version);
  return circuit.ok ? ok({ circuit: circuit.value, key, version }) : circuit;
}

/** Keeps a copy of a circuit with its bench. Refuses as `circuitOf`. */
export function duplicateCircuit(store: Store, id: string, now: Date): Outcome<CircuitRow> {
  const found = circuitOf(store, id);
  if (!found.ok) return found;
  const { circuit, key } = found.value;
  const copy = { ...circuit, title: titleOfCopy(store, circuit.title) };
  const place = addCircuit(store, copy, { name: LIBRARY_NAMES.copied, bench: benchOf(store, key) }, now);
  return ok(circuitRow(store, place.key));
}

/** Gives a circuit another title, as a version of its own. Refuses as `circuitOf`. */
export function renameCircuit(store: Store, id: string, title: string, now: Date): Outcome<CircuitRow> {
  const found = circuitOf(store, id);
  if (!found.ok) return found;
  const { circuit, version, key } = found.value;
  const saved = saveCircuit(store, id, { version, circuit: { ...circuit, title }, name: LIBRARY_NAMES.renamed }, now);
  return saved.ok ? ok(circuitRow(store, key)) : saved;
}

/** Moves a circuit to the bin, or lets go of it for good; its row as it was in the bin. Refuses `circuit-unknown`. */
export function removeCircuit(store: Store, id: string, isForGood: boolean, now: Date): Outcome<CircuitRow> {
  const row = moved(store, id, "library", now);
  const place = isForGood ? placeOf(store, id, "bin") : null;
  if (place?.ok) eraseCircuit(store, place.value.key);
  return row;
}

/** Brings a circuit back out of the bin. Refuses `circuit-unknown`. */
export function restoreCircuit(store: Store, id: string): Outcome<CircuitRow> {
  return moved(store, id, "bin", null);
}

function moved(store: Store, id: string, from: Where, removed: Date | null): Outcome<CircuitRow> {
  const place = placeOf(store, id, from);
  if (!place.ok) return place;
  markRemoved(store, place.value.key, removed);
  return ok(circuitRow(store, place.value.key));
}

/** The first title of a copy that no circuit has. */
function titleOfCopy(store: Store, title: string): string {
  const titles = copyTitles(title);
  for (;;) {
    const { value } = titles.next();
    if (!isTitleTaken(store, value)) return value;
  }
}
