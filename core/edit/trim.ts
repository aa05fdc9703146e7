import type { PointId } from "../base/ids.ts";
import { type Outcome, ok } from "../base/outcome.ts";
import { problemsOf } from "../circuit/check.ts";
import { isReachable } from "../circuit/checkReach.ts";
import type { Circuit, Condition, FunctionCheck, Scene } from "../circuit/circuit.ts";
import { partAt, pointAt } from "../circuit/points.ts";
import { conditionRefusal } from "../live/condition.ts";
import { faultText, parseFault } from "../live/fault.ts";
import { isFuseOfInstrument, isLead } from "../live/instruments/clipped.ts";
import type { PartStates } from "../live/standing.ts";
import type { Before, Bench } from "./bench.ts";
import { type Change, changed } from "./change.ts";
import { clippedTrimmed } from "./clipping.ts";
import { goingOn, trimmed } from "./editOf.ts";
import { inOrder } from "./sceneFields.ts";
import { questionsMoved } from "./sceneQuestions.ts";

/** What follows when things go: the changes, and how many function checks go with them. */
export interface Trimming {
  readonly changes: readonly Change[];
  readonly checksGone: number;
}

/**
 * What is left to do after these changes of the circuit, so that nothing names what is gone: reach, function checks, scenes,
 * the condition, faults, states and what was noted. A check that names a thing that is gone goes, since it can no longer
 * be tried, and one whose load does no work any more; a scene is trimmed, and goes when nothing is left of it. Live state goes on from where it stands. Refuses as
 * `changed` does.
 */
export function trimming(bench: Bench, changes: readonly Change[]): Outcome<Trimming> {
  let next = bench;
  for (const change of changes) {
    const step = changed(next, change);
    if (!step.ok) return step;
    next = step.value.bench;
  }
  const [was, now] = [bench.circuit, next.circuit];
  const goneChecks = now.checks
    .filter((check) => isGone(was, now, check) || isIdle(was, now, check))
    .map(({ id }) => id);
  const follow: readonly Change[] = [
    ...Object.keys(now.reach)
      .filter((key) => !isReachable(now, key))
      .map((key): Change => ({ change: "entry", record: "reach", key })),
    ...goneChecks.map((id): Change => ({ change: "remove", list: "checks", id })),
    ...scenesTrimmed(was, now),
    ...standingTrimmed(bench, now),
    ...notesTrimmed(bench, goneChecks),
  ];
  return ok({ changes: [...changes, ...follow], checksGone: goneChecks.length });
}

// ---------------------------------------------------------------- conditions

/** A condition without what it named before and what is not there any more; itself where nothing is gone. */
function without(was: Circuit, now: Circuit, condition: Condition): Condition {
  const stays = (piece: Condition): boolean => conditionRefusal(now, piece) === null || !stood(was, piece);
  const kept = trimmed({
    ...condition,
    set: entries(condition.set, (key, position) => stays({ set: { [key]: position } })),
    apart: condition.apart?.filter((id) => stays({ apart: [id] })),
    out: condition.out?.filter((id) => stays({ out: [id] })),
    drive: entries(condition.drive, (point, level) => stays({ drive: { [point]: level } })),
  });
  return countOf(kept) === countOf(condition) ? condition : kept;
}

function stood(was: Circuit, piece: Condition): boolean {
  return conditionRefusal(was, piece) === null;
}

function entries<V>(
  record: Readonly<Record<string, V>> | undefined,
  stays: (key: string, value: V) => boolean,
): Readonly<Record<string, V>> | undefined {
  return record && Object.fromEntries(Object.entries(record).filter(([key, value]) => stays(key, value)));
}

/** How many things a condition names. */
function countOf({ set, apart, out, drive }: Condition): number {
  const records = Object.keys(set ?? {}).length + Object.keys(drive ?? {}).length;
  return records + (apart?.length ?? 0) + (out?.length ?? 0);
}

function isRest(condition: Condition): boolean {
  return Object.keys(trimmed(condition)).length === 0;
}

// ---------------------------------------------------------------- what the circuit says

function isGone(was: Circuit, now: Circuit, { load, condition }: FunctionCheck): boolean {
  return partAt(now, load) === undefined || without(was, now, condition) !== condition;
}

/** Whether the load of a check has become a part that does no work. */
function isIdle(was: Circuit, now: Circuit, { id, load }: FunctionCheck): boolean {
  if (partAt(now, load)?.kind === partAt(was, load)?.kind) return false;
  return problemsOf(now).some(({ code, at }) => code === "check-without-work" && at === id);
}

function scenesTrimmed(was: Circuit, now: Circuit): readonly Change[] {
  const scenes = now.scenes.flatMap((scene): readonly Scene[] => {
    const condition = without(was, now, scene.condition);
    if (condition !== scene.condition && isRest(condition)) return [];
    const focus = scene.focus?.filter((id) => partAt(now, id) !== undefined) ?? [];
    const asked = scene.questions ?? [];
    const questions = questionsMoved(asked, (point) => pointLeft(was, now, point));
    const isWhole = condition === scene.condition && focus.length === (scene.focus?.length ?? 0) && questions === asked;
    return [isWhole ? scene : inOrder({ ...scene, condition, focus, questions })];
  });
  const isSame = scenes.length === now.scenes.length && scenes.every((scene, index) => scene === now.scenes[index]);
  return isSame ? [] : [{ change: "circuit", field: "scenes", value: scenes }];
}

/** The point, else the terminal that it carried while its connector was there; null where that is gone too. */
function pointLeft(was: Circuit, now: Circuit, point: PointId): PointId | null {
  if (isLead(now, point)) return point;
  const gone = pointAt(was, point);
  const carried = gone?.kind === "cavity" ? gone.carries : undefined;
  return carried !== undefined && isLead(now, carried) ? carried : null;
}

// ---------------------------------------------------------------- what stands on it

function standingTrimmed(bench: Bench, now: Circuit): readonly Change[] {
  const condition = without(bench.circuit, now, bench.condition);
  const faults = bench.faults.filter((fault) => parseFault(now, faultText(fault)).ok);
  const going = goingOn(bench).value;
  const before: Before = {
    condition: without(bench.circuit, now, going.condition),
    good: statesLeft(bench.circuit, now, going.good),
    now: statesLeft(bench.circuit, now, going.now),
  };
  return [
    { change: "bench", field: "before", value: before },
    ...(condition === bench.condition ? [] : [{ change: "bench", field: "condition", value: condition } as const]),
    ...(faults.length === bench.faults.length ? [] : [{ change: "bench", field: "faults", value: faults } as const]),
    ...clippedTrimmed(bench, now),
  ];
}

/** States of the parts that are there and still of the same kind; a part of another kind begins anew. */
function statesLeft(was: Circuit, now: Circuit, states: PartStates): PartStates {
  const isSame = (id: string): boolean => partAt(now, id)?.kind === partAt(was, id)?.kind;
  const stays = (id: string): boolean => isFuseOfInstrument(id) || (partAt(now, id) !== undefined && isSame(id));
  return Object.fromEntries(Object.entries(states).filter(([id]) => stays(id)));
}

function notesTrimmed({ complaint, observed }: Bench, goneChecks: readonly string[]): readonly Change[] {
  const left = Object.entries(observed).filter(([check]) => !goneChecks.includes(check));
  const isSame = left.length === Object.keys(observed).length;
  return [
    ...(complaint !== null && goneChecks.includes(complaint)
      ? [{ change: "bench", field: "complaint", value: null } as const]
      : []),
    ...(isSame ? [] : [{ change: "bench", field: "observed", value: Object.fromEntries(left) } as const]),
  ];
}
