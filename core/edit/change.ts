import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { GridUnits } from "../base/units.ts";
import type {
  AccessGroup,
  Circuit,
  Connector,
  FunctionCheck,
  Page,
  PartPlace,
  Reach,
  Wire,
} from "../circuit/circuit.ts";
import type { Part } from "../parts/kind.ts";
import type { Bench } from "./bench.ts";

/** Lists of a circuit whose items have an id. */
interface Lists {
  readonly pages: Page;
  readonly parts: Part;
  readonly wires: Wire;
  readonly connectors: Connector;
  readonly access: AccessGroup;
  readonly checks: FunctionCheck;
}
/** Records of a circuit: reach by place, where parts stand by part, bends that a person has set by wire. */
interface Records {
  readonly reach: Reach;
  readonly places: PartPlace;
  readonly bends: readonly (readonly [GridUnits, GridUnits])[];
}
type ListName = keyof Lists;
type RecordName = keyof Records;
type BenchField = Exclude<keyof Bench, "circuit">;
type CircuitField = Exclude<keyof Circuit, ListName | "reach" | "placement" | "format" | "version">;
type ItemField<L extends ListName> = Exclude<keyof Lists[L], "id"> & string;

/** Gives a field of the bench another value. */
type SetBench = {
  [F in BenchField]: { readonly change: "bench"; readonly field: F; readonly value: Bench[F] };
}[BenchField];
/** Gives a field of the circuit itself another value; without a value the field goes. */
type SetCircuit = {
  [F in CircuitField]-?: { readonly change: "circuit"; readonly field: F; readonly value?: Required<Circuit>[F] };
}[CircuitField];
/** Gives a field of a part, wire, connector or the like another value; without a value the field goes. */
type SetItem = {
  [L in ListName]: {
    [F in ItemField<L>]-?: {
      readonly change: "item";
      readonly list: L;
      readonly id: string;
      readonly field: F;
      readonly value?: Required<Lists[L]>[F];
    };
  }[ItemField<L>];
}[ListName];
/** Puts an item into a list, at a place counted from 0. */
type Add = {
  [L in ListName]: { readonly change: "add"; readonly list: L; readonly at: number; readonly item: Lists[L] };
}[ListName];
/** Takes an item out of a list. */
interface Remove {
  readonly change: "remove";
  readonly list: ListName;
  readonly id: string;
}
/** Gives a key of a record a value, at a place in the record's order where one is said; without a value the key goes. */
type SetEntry = {
  [R in RecordName]: {
    readonly change: "entry";
    readonly record: R;
    readonly key: string;
    readonly value?: Records[R];
    readonly at?: number;
  };
}[RecordName];

/** One change of a bench, as plain data. A person's edit is a list of them. */
export type Change = SetBench | SetCircuit | SetItem | Add | Remove | SetEntry;

/** A bench after a change, and the change that takes it back. */
export interface Changed {
  readonly bench: Bench;
  readonly inverse: Change;
}

type Loose = Readonly<Record<string, unknown>>;
interface Named {
  readonly id: string;
}

/** Makes one change. Refuses `edit-gone`, `twice` and `edit-place` where the bench has no room for it. */
export function changed(bench: Bench, change: Change): Outcome<Changed> {
  switch (change.change) {
    case "bench":
      return ok({
        bench: { ...bench, [change.field]: change.value },
        inverse: { ...change, value: bench[change.field] } as Change,
      });
    case "circuit": {
      const { circuit } = bench;
      return ok(inCircuit(bench, withField(circuit, change.field, change.value), valueAgain(change, circuit)));
    }
    case "item":
      return changedItem(bench, change);
    case "add":
      return added(bench, change);
    case "remove":
      return removed(bench, change);
    case "entry":
      return ok(changedEntry(bench, change));
  }
}

function inCircuit(bench: Bench, circuit: Circuit, inverse: Change): Changed {
  return { bench: { ...bench, circuit }, inverse };
}

/** The same change with the value that the holder has now, or with none. */
function valueAgain(change: SetCircuit | SetItem, holder: object): Change {
  const { value: _, ...rest } = change;
  const had = Object.hasOwn(holder, change.field);
  return { ...rest, ...(had && { value: (holder as Loose)[change.field] }) } as Change;
}

function withField<T extends object>(holder: T, field: string, value: unknown): T {
  if (value !== undefined) return { ...holder, [field]: value };
  return Object.fromEntries(Object.entries(holder).filter(([name]) => name !== field)) as T;
}

// ---------------------------------------------------------------- lists

function withList(bench: Bench, list: ListName, items: readonly Named[], inverse: Change): Changed {
  return inCircuit(bench, { ...bench.circuit, [list]: items } as Circuit, inverse);
}

/** What one item of a list is called in a sentence. */
const ITEMS: Readonly<Record<ListName, string>> = {
  pages: "page",
  parts: "part",
  wires: "wire",
  connectors: "connector",
  access: "access group",
  checks: "function check",
};

function changedItem(bench: Bench, change: SetItem): Outcome<Changed> {
  const items: readonly Named[] = bench.circuit[change.list];
  const at = items.findIndex(({ id }) => id === change.id);
  const item = items[at];
  if (!item) return refuse("edit-gone", { what: ITEMS[change.list], id: change.id });
  const next = items.map((each, index) => (index === at ? withField(each, change.field, change.value) : each));
  return ok(withList(bench, change.list, next, valueAgain(change, item)));
}

function added(bench: Bench, { list, at, item }: Add): Outcome<Changed> {
  const items: readonly Named[] = bench.circuit[list];
  if (items.some(({ id }) => id === item.id)) return refuse("twice", { what: ITEMS[list], id: item.id });
  if (!Number.isInteger(at) || at < 0 || at > items.length) return refuse("edit-place", { what: ITEMS[list], at });
  const next = [...items.slice(0, at), item, ...items.slice(at)];
  return ok(withList(bench, list, next, { change: "remove", list, id: item.id }));
}

function removed(bench: Bench, { list, id }: Remove): Outcome<Changed> {
  const items: readonly Named[] = bench.circuit[list];
  const at = items.findIndex((item) => item.id === id);
  if (at < 0) return refuse("edit-gone", { what: ITEMS[list], id });
  const next = items.filter((_, index) => index !== at);
  return ok(withList(bench, list, next, { change: "add", list, at, item: items[at] } as Change));
}

// ---------------------------------------------------------------- records

function recordOf(circuit: Circuit, record: RecordName): Loose {
  if (record === "reach") return circuit.reach;
  return record === "places" ? circuit.placement.parts : circuit.placement.wires;
}

function withRecord(circuit: Circuit, record: RecordName, next: Loose): Circuit {
  if (record === "reach") return { ...circuit, reach: next } as Circuit;
  const field = record === "places" ? "parts" : "wires";
  return { ...circuit, placement: { ...circuit.placement, [field]: next } } as Circuit;
}

/** The order of keys is kept, so that a file comes back byte by byte when an edit is undone. */
function changedEntry(bench: Bench, change: SetEntry): Changed {
  const { key, value, at } = change;
  const entries = Object.entries(recordOf(bench.circuit, change.record));
  const was = entries.findIndex(([name]) => name === key);
  const { value: _, at: __, ...rest } = change;
  const keepsPlace = was >= 0 && value !== undefined && (at === undefined || at === was);
  const inverse = {
    ...rest,
    ...(was >= 0 && { value: entries[was]![1] }),
    ...(was >= 0 && !keepsPlace && { at: was }),
  } as Change;
  if (keepsPlace) entries[was] = [key, value];
  else {
    if (was >= 0) entries.splice(was, 1);
    if (value !== undefined) entries.splice(at ?? entries.length, 0, [key, value]);
  }
  return inCircuit(bench, withRecord(bench.circuit, change.record, Object.fromEntries(entries)), inverse);
}
