import type { Circuit, Condition, Connector, FunctionCheck } from "../circuit/circuit.ts";
import type { Reading } from "../diagnose/reading.ts";
import type { Fault } from "../live/fault.ts";
import type { Part, Settings } from "../parts/kind.ts";
import type { Before, Bench } from "./bench.ts";
import type { Change } from "./change.ts";
import { clippedMoved } from "./clipping.ts";
import { questionsMoved } from "./sceneQuestions.ts";

/** New ids by old ones. Parts, wires and connectors share one set of ids, so that one list serves for all. */
export type Names = ReadonlyMap<string, string>;

/** A name with what it belongs to under its new id: `K2`, `K2.86`, `X5-6`, `S2.middle`; itself where that keeps its id. */
export function renamed(names: Names, name: string): string {
  const [, owner = "", rest = ""] = /^([^.-]*)(.*)$/s.exec(name) ?? [];
  const next = names.get(owner);
  return next === undefined ? name : next + rest;
}

/** The changes by which everything in a bench that names these ids names the new ones. */
export function renaming(bench: Bench, names: Names): readonly Change[] {
  const { circuit } = bench;
  return [
    ...itemsRenamed(circuit, names),
    ...circuit.wires.flatMap(({ id, from, to }): readonly Change[] => {
      const now = renamed(names, id);
      const ends = { from: renamed(names, from), to: renamed(names, to) };
      return (["from", "to"] as const).flatMap((field) =>
        ends[field] === { from, to }[field]
          ? []
          : [{ change: "item", list: "wires", id: now, field, value: ends[field] }],
      );
    }),
    ...keysRenamed(names, "reach", circuit.reach),
    ...keysRenamed(names, "places", circuit.placement.parts),
    ...keysRenamed(names, "bends", circuit.placement.wires),
    ...circuit.checks.flatMap((check) => checkRenamed(names, check)),
    ...scenesRenamed(names, circuit),
    ...linksRenamed(names, circuit),
    ...standingRenamed(names, bench),
  ];
}

// ---------------------------------------------------------------- what has a name

/** An item under another id takes the place of the one before it. */
function itemsRenamed(circuit: Circuit, names: Names): readonly Change[] {
  const changes: Change[] = [];
  for (const list of ["parts", "wires", "connectors"] as const) {
    for (const [at, item] of circuit[list].entries()) {
      const id = names.get(item.id);
      if (id === undefined) continue;
      changes.push({ change: "remove", list, id: item.id });
      changes.push({ change: "add", list, at, item: { ...item, id } } as Change);
    }
  }
  return [...changes, ...circuit.connectors.flatMap((connector) => cavitiesRenamed(names, connector))];
}

function cavitiesRenamed(names: Names, { id, cavities }: Connector): readonly Change[] {
  if (!cavities) return [];
  const value = valuesRenamed(names, cavities);
  if (value === cavities) return [];
  return [{ change: "item", list: "connectors", id: renamed(names, id), field: "cavities", value }];
}

function valuesRenamed(names: Names, record: Readonly<Record<string, string>>): Readonly<Record<string, string>> {
  const entries = Object.entries(record);
  if (entries.every(([, value]) => renamed(names, value) === value)) return record;
  return Object.fromEntries(entries.map(([key, value]) => [key, renamed(names, value)]));
}

function keysRenamed(
  names: Names,
  record: "reach" | "places" | "bends",
  entries: Readonly<Record<string, unknown>>,
): readonly Change[] {
  return Object.entries(entries).flatMap(([key, value], at): readonly Change[] => {
    const next = renamed(names, key);
    if (next === key) return [];
    return [{ change: "entry", record, key }, { change: "entry", record, key: next, value, at } as Change];
  });
}

// ---------------------------------------------------------------- conditions, checks, scenes

/** A condition that names the new ids, in the order in which it was written; itself where nothing in it is renamed. */
export function conditionRenamed(names: Names, condition: Condition): Condition {
  const keys = [...Object.keys(condition.set ?? {}), ...Object.keys(condition.drive ?? {})];
  const all = [...keys, ...(condition.apart ?? []), ...(condition.out ?? [])];
  if (all.every((name) => renamed(names, name) === name)) return condition;
  const list = (ids: readonly string[]): readonly string[] => ids.map((id) => renamed(names, id));
  const { set, apart, out, drive } = condition;
  return {
    ...condition,
    ...(set && { set: withKeysRenamed(names, set) }),
    ...(apart && { apart: list(apart) }),
    ...(out && { out: list(out) }),
    ...(drive && { drive: withKeysRenamed(names, drive) }),
  };
}

function withKeysRenamed<V>(names: Names, record: Readonly<Record<string, V>>): Readonly<Record<string, V>> {
  return Object.fromEntries(Object.entries(record).map(([key, value]) => [renamed(names, key), value]));
}

function checkRenamed(names: Names, { id, load, condition }: FunctionCheck): readonly Change[] {
  const [part, next] = [renamed(names, load), conditionRenamed(names, condition)];
  return [
    ...(part === load ? [] : [{ change: "item", list: "checks", id, field: "load", value: part } as const]),
    ...(next === condition ? [] : [{ change: "item", list: "checks", id, field: "condition", value: next } as const]),
  ];
}

function scenesRenamed(names: Names, { scenes }: Circuit): readonly Change[] {
  const value = scenes.map((scene) => {
    const condition = conditionRenamed(names, scene.condition);
    const focus = scene.focus?.map((id) => renamed(names, id));
    const questions = scene.questions && questionsMoved(scene.questions, (point) => renamed(names, point));
    const isSame =
      condition === scene.condition &&
      questions === scene.questions &&
      (focus ?? []).every((id, at) => id === scene.focus![at]);
    return isSame ? scene : { ...scene, condition, ...(focus && { focus }), ...(questions && { questions }) };
  });
  return value.every((scene, index) => scene === scenes[index]) ? [] : [{ change: "circuit", field: "scenes", value }];
}

// ---------------------------------------------------------------- page links

/**
 * A page link that is called after the part, `K2` or `K2.87`, is called after it still, with all links of its name; but
 * never by a name that other links have, which would join two nets.
 */
function linksRenamed(names: Names, { parts }: Circuit): readonly Change[] {
  const links = parts.flatMap((part) => (typeof part.settings?.name === "string" && isLink(part) ? [part] : []));
  const taken = new Set(links.map(linkName));
  return links.flatMap((part): readonly Change[] => {
    const name = linkName(part);
    const next = renamed(names, name);
    if (next === name || taken.has(next)) return [];
    const value: Settings = { ...part.settings, name: next };
    return [{ change: "item", list: "parts", id: renamed(names, part.id), field: "settings", value }];
  });
}

function isLink(part: Part): boolean {
  return part.kind === "page-link";
}

function linkName(part: Part): string {
  return String(part.settings?.name).trim();
}

// ---------------------------------------------------------------- what stands on the circuit

function standingRenamed(names: Names, { condition, before, faults, readings, clipped }: Bench): readonly Change[] {
  const next = conditionRenamed(names, condition);
  const states: Before = {
    condition: conditionRenamed(names, before.condition),
    good: withKeysRenamed(names, before.good),
    now: withKeysRenamed(names, before.now),
  };
  const defects = faults.map((fault) => faultRenamed(names, fault));
  const isSame = defects.every((fault, index) => fault === faults[index]);
  const read = readings.map((reading) => readingRenamed(names, reading));
  return [
    { change: "bench", field: "before", value: states },
    ...(next === condition ? [] : [{ change: "bench", field: "condition", value: next } as const]),
    ...(isSame ? [] : [{ change: "bench", field: "faults", value: defects } as const]),
    ...(read.every((reading, index) => reading === readings[index])
      ? []
      : [{ change: "bench", field: "readings", value: read } as const]),
    ...clippedMoved(
      clipped,
      (point) => renamed(names, point),
      (wire) => renamed(names, wire),
    ),
  ];
}

function readingRenamed(names: Names, reading: Reading): Reading {
  const red = renamed(names, reading.red);
  const black = isPost(reading.black) ? reading.black : renamed(names, reading.black);
  const condition = conditionRenamed(names, reading.condition);
  const isSame = red === reading.red && black === reading.black && condition === reading.condition;
  return isSame ? reading : { ...reading, red, black, condition };
}

function isPost(lead: string): boolean {
  return lead === "battery +" || lead === "battery -";
}

/** The value of a crossed wire is the other wire. */
function faultRenamed(names: Names, fault: Fault): Fault {
  const target = renamed(names, fault.target);
  const value = typeof fault.value === "string" ? renamed(names, fault.value) : fault.value;
  if (target === fault.target && value === fault.value) return fault;
  return { ...fault, target, ...(value !== undefined && { value }) };
}
