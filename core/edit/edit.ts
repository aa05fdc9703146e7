import { type Outcome, ok } from "../base/outcome.ts";
import type { Bench } from "./bench.ts";
import { type Change, changed } from "./change.ts";
import { fitRefusal } from "./fit.ts";

/** What a person does, as a value: changes in order, and a name that stands after "Undo:" - "move relay K2". */
export interface Edit {
  readonly name: string;
  readonly changes: readonly Change[];
}

/** A bench after an edit, and the edit that brings back the bench before it. */
export interface Applied {
  readonly bench: Bench;
  readonly inverse: Edit;
}

/**
 * The only door to a new bench. The inverse is made while the changes are, never found by comparing. Refuses an edit
 * that the bench has no room for, or after which something would name what is not there; the bench is then untouched.
 */
export function apply(bench: Bench, edit: Edit): Outcome<Applied> {
  let now = bench;
  const inverses: Change[] = [];
  for (const change of edit.changes) {
    const step = changed(now, change);
    if (!step.ok) return step;
    now = step.value.bench;
    inverses.unshift(step.value.inverse);
  }
  const refusal = fitRefusal(now, edit.changes);
  if (refusal) return { ok: false, refusal };
  return ok({ bench: now, inverse: { name: edit.name, changes: inverses } });
}

/**
 * Two edits as one, the first made before the second. A value that both set is set once, so that a drag of a thousand
 * steps is no longer than one step.
 */
export function joined(first: Edit, second: Edit): Edit {
  const changes = [...first.changes];
  for (const change of second.changes) {
    const at = placeOf(changes, change);
    const both = at < 0 ? null : merged(changes[at]!, change);
    if (both) changes[at] = both;
    else changes.push(change);
  }
  return { name: second.name, changes };
}

/** Place of the last change that set the same value, or -1; what comes or goes after it parts the two. */
function placeOf(changes: readonly Change[], change: Change): number {
  const target = targetOf(change);
  for (let at = changes.length - 1; target !== null && at >= 0; at--) {
    const earlier = targetOf(changes[at]!);
    if (earlier === null) return -1;
    if (earlier === target) return at;
  }
  return -1;
}

/** What a change sets, as one text; null where an item comes or goes. */
function targetOf(change: Change): string | null {
  switch (change.change) {
    case "bench":
    case "circuit":
      return `${change.change} ${change.field}`;
    case "item":
      return `item ${change.list} ${change.id} ${change.field}`;
    case "entry":
      return `entry ${change.record} ${change.key}`;
    case "add":
    case "remove":
      return null;
  }
}

/** The later of two settings of one target, or null where a key of a record comes or goes: its order needs both. */
function merged(earlier: Change, later: Change): Change | null {
  if (earlier.change !== "entry" || later.change !== "entry") return later;
  if (earlier.value === undefined || later.value === undefined || later.at !== undefined) return null;
  return earlier.at === undefined ? later : ({ ...later, at: earlier.at } as Change);
}
