import type { ControlKey, PartId } from "../base/ids.ts";
import { remember } from "../base/memo.ts";
import type { Condition } from "../circuit/circuit.ts";
import type { State } from "../solve/solver.ts";
import { conditionText } from "./condition.ts";
import { type Beside, type Course, stopOf } from "./course.ts";
import type { Rig } from "./rig.ts";
import { reach, restore, type Settled, settle } from "./settle.ts";

/** Reads a rig in a condition. Where it shows what the sound circuit does but for ohms, that one's operating point is given. */
export type Read = (condition: number, point: State | null) => void;

/**
 * Tries a complaint once from good fuses, then brings a rig to each of several conditions as `reach` would, what melted
 * out in all of them, and has it read there; `read` is given the number of the condition, a second time where the first
 * was before the complaint melted something. What conditions begin with alike is thrown and settled once, so they come
 * in an order of their own. Where the rig would go the way of a sound one beside it, it is read without being thrown.
 */
export function inEach(
  rig: Rig,
  complaint: Condition,
  conditions: readonly Condition[],
  read: Read,
  way: Way = {},
): void {
  const order = orderOf(conditions)(complaint);
  const going: Going = { rig, read, ...way };
  const trying: Trying = { melted: [], isDone: false };
  if (goThrough(going, order, trying)) return;
  goThrough(going, order, { melted: trying.melted, isDone: true });
}

/** What a sound rig's way is noted in, or the sound one's way beside which another goes. */
export interface Way {
  readonly noted?: Course;
  readonly beside?: Beside;
}

interface Going extends Way {
  readonly rig: Rig;
  readonly read: Read;
}

/** What has melted since the rig set out to try the complaint, and whether that is done. */
interface Trying {
  readonly melted: PartId[];
  isDone: boolean;
}

/** Conditions that say the same beside their controls, and their throws. */
interface Tree {
  readonly first: Condition;
  readonly throws: Throws;
}

/** Controls thrown one after the other, as a tree: what is read where its throws are done, and what may be thrown next. */
interface Throws {
  readonly numbers: number[];
  readonly next: Map<string, { readonly key: ControlKey; readonly position: string; readonly onward: Throws }>;
  /** Whether the complaint is tried here; it is the first to be come to. */
  isTried: boolean;
}

/** Conditions as trees of throws, that of the complaint first; remembered, for the same lists are asked for with every suspect. */
const orderOf = remember((conditions: readonly Condition[]) =>
  remember((complaint: Condition): readonly Tree[] => {
    const trees = new Map<string, Tree>();
    throwsOf(trees, complaint).isTried = true;
    for (const [number, condition] of conditions.entries()) throwsOf(trees, condition).numbers.push(number);
    return [...trees.values()];
  }),
);

/** The place of a condition in its tree, both made where they are not there. */
function throwsOf(trees: Map<string, Tree>, condition: Condition): Throws {
  const around = conditionText({ ...condition, set: {} });
  const tree = trees.get(around) ?? { first: condition, throws: nothingThrown() };
  trees.set(around, tree);
  let at = tree.throws;
  for (const [key, position] of Object.entries(condition.set ?? {})) {
    const name = `${key}=${position}`;
    const next = at.next.get(name) ?? { key, position, onward: nothingThrown() };
    at.next.set(name, next);
    at = next.onward;
  }
  return at;
}

function nothingThrown(): Throws {
  return { numbers: [], next: new Map(), isTried: false };
}

/** False as soon as the complaint was tried and has melted something: all must be gone through again without it. */
function goThrough(going: Going, order: readonly Tree[], trying: Trying): boolean {
  const { rig } = going;
  const out = trying.isDone ? trying.melted : [];
  return order.every(({ first, throws }) => {
    const from = rig.trail.length;
    note(trying, reach(rig, { ...first, set: {} }, undefined, out));
    return follow(going, throws, trying, from);
  });
}

/**
 * Reads where the rig stands and from there on; every control is back where it was in the end, what it moved is not. Its
 * trail to here begins at `from`.
 */
function follow(going: Going, throws: Throws, trying: Trying, from: number): boolean {
  const { rig, read, noted, beside } = going;
  const { numbers, next, isTried } = throws;
  if (isTried && !trying.isDone) {
    if (trying.melted.length > 0) return false;
    trying.isDone = true;
  }
  const stop = noted && stopOf(rig);
  const isAsSound = beside?.hasStatesOf(rig, throws) ?? false;
  const point = isAsSound ? beside!.pointAt(throws) : null;
  for (const number of numbers) read(number, point);
  let left = next.size;
  const states = left > 1 ? rig.statesNow() : null;
  for (const { key, position, onward } of next.values()) {
    left--;
    if (isAsSound && trying.isDone && beside!.isUnmovedFrom(onward)) {
      readOnward(going, onward);
      continue;
    }
    const before = rig.position(key);
    const start = rig.trail.length;
    rig.throwControl(key, position);
    // A control that stands where it is wanted may have been thrown and put back since.
    if (before !== position || !rig.solver.isSolved) note(trying, settle(rig));
    if (!follow(going, onward, trying, start)) return false;
    rig.throwControl(key, before);
    if (left > 0 && states) restore(rig, states);
  }
  if (stop) noted.note(throws, stop, rig.trail.slice(from));
  return true;
}

/** Has all be read from a place on where the rig shows what the sound one does. */
function readOnward(going: Going, throws: Throws): void {
  const point = going.beside!.pointAt(throws);
  for (const number of throws.numbers) going.read(number, point);
  for (const { onward } of throws.next.values()) readOnward(going, onward);
}

function note(trying: Trying, { happenings }: Settled): void {
  if (trying.isDone) return;
  for (const happening of happenings) if (happening.what === "melted") trying.melted.push(happening.part);
}
