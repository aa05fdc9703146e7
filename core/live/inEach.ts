import type { ControlKey, PartId } from "../base/ids.ts";
import type { Condition } from "../circuit/circuit.ts";
import { conditionText } from "./condition.ts";
import type { Rig } from "./rig.ts";
import { reach, restore, settle } from "./settle.ts";

/**
 * Brings a rig to each of several conditions as `reach` would, and has it read there; `read` is given the number of the
 * condition. What conditions begin with alike is thrown and settled once, so they come in an order of their own.
 */
export function inEach(
  rig: Rig,
  conditions: readonly Condition[],
  melted: readonly PartId[],
  read: (condition: number) => void,
): void {
  for (const { first, throws } of orderOf(conditions)) {
    reach(rig, { ...first, set: {} }, undefined, melted);
    follow(rig, throws, read);
  }
}

/** Controls thrown one after the other, as a tree: what is read where its throws are done, and what may be thrown next. */
interface Throws {
  readonly numbers: number[];
  readonly next: Map<string, { readonly key: ControlKey; readonly position: string; readonly onward: Throws }>;
}

const orders = new WeakMap<readonly Condition[], readonly { readonly first: Condition; readonly throws: Throws }[]>();

/** Conditions by what they say beside their controls, each as a tree of throws; remembered, for the same list is asked for with every suspect. */
function orderOf(conditions: readonly Condition[]): readonly { readonly first: Condition; readonly throws: Throws }[] {
  const known = orders.get(conditions);
  if (known) return known;
  const trees = new Map<string, { readonly first: Condition; readonly throws: Throws }>();
  conditions.forEach((condition, number) => {
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
    at.numbers.push(number);
  });
  const order = [...trees.values()];
  orders.set(conditions, order);
  return order;
}

function nothingThrown(): Throws {
  return { numbers: [], next: new Map() };
}

/** Reads where the rig stands and from there on; every control is back where it was in the end, what it moved is not. */
function follow(rig: Rig, { numbers, next }: Throws, read: (condition: number) => void): void {
  for (const number of numbers) read(number);
  let left = next.size;
  const states = left > 1 ? new Map(rig.states) : null;
  for (const { key, position, onward } of next.values()) {
    const before = rig.position(key);
    if (before !== position) {
      rig.throwControl(key, position);
      settle(rig);
    }
    follow(rig, onward, read);
    rig.throwControl(key, before);
    if (--left > 0 && states) restore(rig, states);
  }
}
