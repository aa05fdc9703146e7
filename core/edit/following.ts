import type { ControlKey, PartId, PointId } from "../base/ids.ts";
import { type Outcome, ok } from "../base/outcome.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import type { Reading } from "../diagnose/reading.ts";
import type { Fault } from "../live/fault.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { Part } from "../parts/kind.ts";
import { viewOf } from "../parts/view.ts";
import type { Bench } from "./bench.ts";
import { type Change, changed } from "./change.ts";
import { clippedMoved } from "./clipping.ts";
import { goingOn } from "./editOf.ts";
import { questionsMoved } from "./sceneQuestions.ts";
import { trimming } from "./trim.ts";

/** Names inside parts and connectors that have changed, old to new; what is not named keeps its name. */
export interface Renames {
  /** Terminals and cavities: `S5.6`, `X5-6`. */
  readonly points?: ReadonlyMap<PointId, PointId>;
  readonly controls?: ReadonlyMap<ControlKey, ControlKey>;
  /** Names of positions by the old key of their control. */
  readonly positions?: ReadonlyMap<ControlKey, ReadonlyMap<string, string>>;
  /** Ways to fail, by part. */
  readonly modes?: ReadonlyMap<PartId, ReadonlyMap<string, string>>;
}

/**
 * All changes of an edit that first gives things other names and then takes some away: `renaming` with all that names them,
 * then `changing` with what names what is gone by it. Refuses as `changed` does.
 */
export function followed(
  bench: Bench,
  renaming: readonly Change[],
  renames: Renames,
  changing: readonly Change[],
): Outcome<readonly Change[]> {
  const first = [...renaming, ...following(bench, renames)];
  const called = benchAfter(bench, first);
  if (!called.ok) return called;
  const rest = trimming(called.value, changing);
  return rest.ok ? ok([...first, ...rest.value.changes]) : rest;
}

/** The bench after changes that need not hold together yet: more are to follow before it is one. Refuses as `changed` does. */
export function benchAfter(bench: Bench, changes: readonly Change[]): Outcome<Bench> {
  let next = bench;
  for (const change of changes) {
    const step = changed(next, change);
    if (!step.ok) return step;
    next = step.value.bench;
  }
  return ok(next);
}

/** How the ways to fail of a part are called now, by what they were called; the two differ in nothing but names. */
export function modesRenamed({ nominalVolts }: Circuit, was: Part, now: Part): ReadonlyMap<string, string> {
  const modesOf = (part: Part): readonly string[] => {
    const kind = kindOf(part.kind);
    return kind ? kind.faults(viewOf(kind, part, nominalVolts)).map(({ mode }) => mode) : [];
  };
  const next = modesOf(now);
  return new Map(modesOf(was).flatMap((mode, index) => (next[index] === undefined ? [] : [[mode, next[index]]])));
}

// ---------------------------------------------------------------- all that names them

function following(bench: Bench, renames: Renames): readonly Change[] {
  const { circuit } = bench;
  const point = (id: PointId): PointId => renames.points?.get(id) ?? id;
  const changes: Change[] = [];
  for (const { id, from, to } of circuit.wires) {
    if (point(from) !== from) changes.push({ change: "item", list: "wires", id, field: "from", value: point(from) });
    if (point(to) !== to) changes.push({ change: "item", list: "wires", id, field: "to", value: point(to) });
  }
  for (const { id, cavities } of circuit.connectors) {
    const carried = Object.entries(cavities ?? {});
    if (carried.every(([, terminal]) => point(terminal) === terminal)) continue;
    const value = Object.fromEntries(carried.map(([cavity, terminal]) => [cavity, point(terminal)]));
    changes.push({ change: "item", list: "connectors", id, field: "cavities", value });
  }
  changes.push(...reachFollowing(circuit, point));
  for (const { id, condition } of circuit.checks) {
    const value = conditionFollowing(condition, renames);
    if (value !== condition) changes.push({ change: "item", list: "checks", id, field: "condition", value });
  }
  const scenes = circuit.scenes.map((scene) => {
    const condition = conditionFollowing(scene.condition, renames);
    const questions = scene.questions && questionsMoved(scene.questions, point);
    if (condition === scene.condition && questions === scene.questions) return scene;
    return { ...scene, condition, ...(questions && { questions }) };
  });
  if (scenes.some((scene, index) => scene !== circuit.scenes[index])) {
    changes.push({ change: "circuit", field: "scenes", value: scenes });
  }
  return [...changes, ...standingFollowing(bench, renames)];
}

/** Keys keep their places: those that go are taken out first, so that two can change their names. */
function reachFollowing({ reach }: Circuit, point: (id: PointId) => PointId): readonly Change[] {
  const moved = Object.entries(reach).flatMap(([key, value], at) => (point(key) === key ? [] : [{ key, value, at }]));
  return [
    ...moved.map(({ key }): Change => ({ change: "entry", record: "reach", key })),
    ...moved.map(({ key, value, at }): Change => ({ change: "entry", record: "reach", key: point(key), value, at })),
  ];
}

/** A condition with the new names, in the order in which it was written; itself where nothing in it is renamed. */
function conditionFollowing(condition: Condition, { points, controls, positions }: Renames): Condition {
  const { set, drive } = condition;
  const next: Condition = {
    ...condition,
    ...(set && {
      set: Object.fromEntries(
        Object.entries(set).map(([key, name]) => [controls?.get(key) ?? key, positions?.get(key)?.get(name) ?? name]),
      ),
    }),
    ...(drive && {
      drive: Object.fromEntries(Object.entries(drive).map(([id, level]) => [points?.get(id) ?? id, level])),
    }),
  };
  return JSON.stringify(next) === JSON.stringify(condition) ? condition : next;
}

function standingFollowing(bench: Bench, renames: Renames): readonly Change[] {
  const condition = conditionFollowing(bench.condition, renames);
  const faults = bench.faults.map((fault) => faultFollowing(fault, renames));
  const readings = bench.readings.map((reading) => readingFollowing(reading, renames));
  const going = goingOn(bench).value;
  const value = { ...going, condition: conditionFollowing(going.condition, renames) };
  return [
    { change: "bench", field: "before", value },
    ...(condition === bench.condition ? [] : [{ change: "bench", field: "condition", value: condition } as const]),
    ...(faults.every((fault, index) => fault === bench.faults[index])
      ? []
      : [{ change: "bench", field: "faults", value: faults } as const]),
    ...(readings.every((reading, index) => reading === bench.readings[index])
      ? []
      : [{ change: "bench", field: "readings", value: readings } as const]),
    ...clippedMoved(bench.clipped, (point) => renames.points?.get(point) ?? point),
  ];
}

function readingFollowing(reading: Reading, renames: Renames): Reading {
  const red = renames.points?.get(reading.red) ?? reading.red;
  const black = renames.points?.get(reading.black) ?? reading.black;
  const condition = conditionFollowing(reading.condition, renames);
  const isSame = red === reading.red && black === reading.black && condition === reading.condition;
  return isSame ? reading : { ...reading, red, black, condition };
}

function faultFollowing(fault: Fault, { points, modes }: Renames): Fault {
  const target = points?.get(fault.target) ?? fault.target;
  const mode = modes?.get(fault.target)?.get(fault.mode) ?? fault.mode;
  return target === fault.target && mode === fault.mode ? fault : { ...fault, target, mode };
}
