import { type Outcome, ok } from "../../core/base/outcome.ts";
import { LIBRARY_NAMES } from "../../core/base/words/library.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { CircuitRow } from "../../schemas/calls.ts";
import { formatCircuit, readCircuit } from "../../schemas/circuit.ts";
import { LIMITS } from "../../schemas/limits.ts";
import { fileNameOf } from "../fileName.ts";
import { benchOf } from "../store/benches.ts";
import { addCircuit, eraseCircuit, isTitleTaken, markRemoved, placeOf, saveCircuit } from "../store/circuits.ts";
import { circuitRow, listCircuits } from "../store/list.ts";
import type { Store } from "../store/open.ts";
import { noteClosed } from "../store/recent.ts";
import { saveBench } from "../store/saveBench.ts";
import { circuitInVersion } from "../store/versions.ts";
import { bringIn, bringNew, bringToBench } from "./bring.ts";
import type { AnswersOf, Host } from "./host.ts";
import { sampleOf } from "./samples.ts";

/** What the library answers. Every one refuses `store-...` where the library cannot be opened. */
export const CIRCUIT_ANSWERS: AnswersOf<
  | "circuits.list"
  | "circuits.open"
  | "circuits.close"
  | "circuits.read"
  | "circuits.create"
  | "circuits.fromSample"
  | "circuits.import"
  | "circuits.save"
  | "circuits.duplicate"
  | "circuits.rename"
  | "circuits.remove"
  | "circuits.restore"
  | "circuits.exportText"
  | "benches.save"
> = {
  "circuits.list": (asked, host) => withStore(host, (store) => ok(listCircuits(store, asked))),

  "circuits.open": ({ id }, host) =>
    withStore(host, (store) => {
      const place = placeOf(store, id);
      return place.ok ? bringToBench(store, place.value, host.now()) : place;
    }),

  "circuits.close": (_, host) =>
    withStore(host, (store) => {
      noteClosed(store);
      return ok({});
    }),

  "circuits.read": ({ id }, host) =>
    withStore(host, (store) => {
      const found = circuitOf(store, id);
      return found.ok ? ok({ circuit: found.value.circuit, version: found.value.version }) : found;
    }),

  "circuits.create": ({ circuit, bench, jobs }, host) =>
    withStore(host, (store) => bringNew(store, circuit, { name: LIBRARY_NAMES.begun, bench, jobs }, host.now())),

  "circuits.fromSample": async ({ sample }, host) => {
    const circuit = await sampleOf(host, sample);
    if (!circuit.ok) return circuit;
    return withStore(host, (store) => bringNew(store, circuit.value, { name: LIBRARY_NAMES.sample }, host.now()));
  },

  "circuits.import": async ({ text }, host) => {
    const circuit = readCircuit(text);
    return circuit.ok ? withStore(host, (store) => bringIn(store, circuit.value, host.now())) : circuit;
  },

  "circuits.save": ({ id, version, circuit, name, bench, benchVersion, jobs }, host) =>
    withStore(host, (store) => {
      const now = host.now();
      const stands = saveCircuit(store, id, { version, circuit, name, bench: { bench, benchVersion }, jobs }, now);
      return stands.ok ? ok({ ...stands.value, saved: now.toISOString() }) : stands;
    }),

  "benches.save": ({ id, ...save }, host) =>
    withStore(host, (store) => {
      const now = host.now();
      const stands = saveBench(store, id, save, now);
      return stands.ok ? ok({ ...stands.value, saved: now.toISOString() }) : stands;
    }),

  "circuits.duplicate": ({ id }, host) =>
    withStore(host, (store) => {
      const found = circuitOf(store, id);
      if (!found.ok) return found;
      const { circuit, key } = found.value;
      const copy = { ...circuit, title: titleOfCopy(store, circuit.title) };
      const place = addCircuit(store, copy, { name: LIBRARY_NAMES.copied, bench: benchOf(store, key) }, host.now());
      return ok(circuitRow(store, place.key));
    }),

  "circuits.rename": ({ id, title }, host) =>
    withStore(host, (store): Outcome<CircuitRow> => {
      const found = circuitOf(store, id);
      if (!found.ok) return found;
      const { circuit, version, key } = found.value;
      const renamed = { version, circuit: { ...circuit, title }, name: LIBRARY_NAMES.renamed };
      const saved = saveCircuit(store, id, renamed, host.now());
      return saved.ok ? ok(circuitRow(store, key)) : saved;
    }),

  "circuits.remove": ({ id, isForGood }, host) =>
    withStore(host, (store) => {
      const row = moved(store, id, "library", host.now());
      const place = isForGood ? placeOf(store, id, "bin") : null;
      if (place?.ok) eraseCircuit(store, place.value.key);
      return row;
    }),

  "circuits.restore": ({ id }, host) => withStore(host, (store) => moved(store, id, "bin", null)),

  "circuits.exportText": ({ id }, host) =>
    withStore(host, (store) => {
      const found = circuitOf(store, id);
      if (!found.ok) return found;
      const { circuit } = found.value;
      return ok({ text: formatCircuit(circuit), name: fileNameOf(circuit.title, "circuit.json") });
    }),
};

/** What a function makes of the open library, or why it cannot be opened. */
export async function withStore<T>(host: Host, use: (store: Store) => Outcome<T>): Promise<Outcome<T>> {
  const store = await host.keeper.store();
  return store.ok ? use(store.value) : store;
}

interface Found {
  readonly circuit: Circuit;
  readonly key: number;
  readonly version: number;
}

function circuitOf(store: Store, id: string): Outcome<Found> {
  const place = placeOf(store, id);
  if (!place.ok) return place;
  const { key, version } = place.value;
  const circuit = circuitInVersion(store, key, version);
  return circuit.ok ? ok({ circuit: circuit.value, key, version }) : circuit;
}

function moved(store: Store, id: string, from: "library" | "bin", removed: Date | null): Outcome<CircuitRow> {
  const place = placeOf(store, id, from);
  if (!place.ok) return place;
  markRemoved(store, place.value.key, removed);
  return ok(circuitRow(store, place.value.key));
}

/** `Roof vents (copy)`, `Roof vents (copy 2)` and so on, the first that is free. */
function titleOfCopy(store: Store, title: string): string {
  const plain = title.replace(/ \(copy(?: \d+)?\)$/, "");
  for (let number = 1; ; number++) {
    const sign = ` (${LIBRARY_NAMES.copy}${number === 1 ? "" : ` ${number}`})`;
    const copy = plain.slice(0, LIMITS.labelLength - sign.length) + sign;
    if (!isTitleTaken(store, copy)) return copy;
  }
}
