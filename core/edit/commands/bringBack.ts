import type { Outcome } from "../../base/outcome.ts";
import type { Circuit } from "../../circuit/circuit.ts";
import { checkFor } from "../../diagnose/drain.ts";
import { conditionRefusal } from "../../live/condition.ts";
import { faultText, parseFault } from "../../live/fault.ts";
import type { Bench } from "../bench.ts";
import type { Change } from "../change.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";

/**
 * Makes the circuit on the bench another one of its versions: one edit, undone as one. Of what stands on the bench all
 * stays that fits; where its condition does not, all goes to rest. Refuses `already-so`, and as `apply` does.
 */
export function bringBack(bench: Bench, earlier: Circuit, name: string): Outcome<Edit> {
  const changes = circuitChanges(bench.circuit, earlier);
  return changes.length === 0 ? alreadySo(name) : editOf(bench, name, [...benchChanges(bench, earlier), ...changes]);
}

const LISTS = ["pages", "parts", "wires", "connectors", "access", "checks"] as const;
const FIELDS = [
  "title",
  "vehicle",
  "revision",
  "nominalVolts",
  "colourCodes",
  "scenes",
  "cautions",
] as const satisfies readonly (keyof Circuit)[];

function circuitChanges(now: Circuit, earlier: Circuit): readonly Change[] {
  return [
    ...FIELDS.flatMap((field) => fieldChange(field, now[field], earlier[field])),
    ...LISTS.flatMap((list) => listChanges(list, now[list], earlier[list])),
    ...recordChanges("reach", now.reach, earlier.reach),
    ...recordChanges("places", now.placement.parts, earlier.placement.parts),
    ...recordChanges("bends", now.placement.wires, earlier.placement.wires),
  ];
}

function fieldChange(field: (typeof FIELDS)[number], now: unknown, earlier: unknown): readonly Change[] {
  if (isSame(now, earlier)) return [];
  return [{ change: "circuit", field, ...(earlier !== undefined && { value: earlier }) } as Change];
}

/** Items at the head and at the end that are the same stay; what lies between is taken out and put in. */
function listChanges(
  list: (typeof LISTS)[number],
  now: readonly { readonly id: string }[],
  earlier: readonly { readonly id: string }[],
): readonly Change[] {
  const { from, toNow, toEarlier } = differing(now, earlier);
  return [
    ...now.slice(from, toNow).map(({ id }): Change => ({ change: "remove", list, id })),
    ...earlier.slice(from, toEarlier).map((item, index) => ({ change: "add", list, at: from + index, item }) as Change),
  ];
}

/** As of a list: the order of keys is part of the file. */
function recordChanges(
  record: "reach" | "places" | "bends",
  now: Readonly<Record<string, unknown>>,
  earlier: Readonly<Record<string, unknown>>,
): readonly Change[] {
  const [had, wanted] = [Object.entries(now), Object.entries(earlier)];
  const { from, toNow, toEarlier } = differing(had, wanted);
  return [
    ...had.slice(from, toNow).map(([key]): Change => ({ change: "entry", record, key })),
    ...wanted
      .slice(from, toEarlier)
      .map(([key, value], index) => ({ change: "entry", record, key, value, at: from + index }) as Change),
  ];
}

/** Where two lists begin to differ, and where the rest of either is the same again. */
function differing(
  now: readonly unknown[],
  earlier: readonly unknown[],
): { readonly from: number; readonly toNow: number; readonly toEarlier: number } {
  const shortest = Math.min(now.length, earlier.length);
  let from = 0;
  while (from < shortest && isSame(now[from], earlier[from])) from++;
  let same = 0;
  while (same < shortest - from && isSame(now.at(-1 - same), earlier.at(-1 - same))) same++;
  return { from, toNow: now.length - same, toEarlier: earlier.length - same };
}

function isSame(one: unknown, other: unknown): boolean {
  return one === other || JSON.stringify(one) === JSON.stringify(other);
}

/** Everything starts from rest with what fits: where relays stood in the other circuit says nothing of this one. */
function benchChanges({ condition, faults, observed, complaint }: Bench, earlier: Circuit): readonly Change[] {
  const checks = new Set(earlier.checks.map(({ id }) => id));
  return [
    { change: "bench", field: "before", value: { condition: {}, good: {}, now: {} } },
    { change: "bench", field: "condition", value: conditionRefusal(earlier, condition) ? {} : condition },
    { change: "bench", field: "faults", value: faults.filter((fault) => parseFault(earlier, faultText(fault)).ok) },
    {
      change: "bench",
      field: "observed",
      value: Object.fromEntries(Object.entries(observed).filter(([check]) => checks.has(check))),
    },
    { change: "bench", field: "complaint", value: checkFor(earlier, complaint) ? complaint : null },
  ];
}
