import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Bench } from "./bench.ts";
import { apply, type Edit, joined } from "./edit.ts";

/** An edit that was made, with what takes it back. */
export interface Step {
  readonly edit: Edit;
  readonly inverse: Edit;
  /** Edits of one gesture that follow each other under one key are one step; null joins nothing. */
  readonly group: string | null;
}

/** What was done and what was undone, as plain data; the last of each list is the next to be undone or done again. */
export interface History {
  readonly done: readonly Step[];
  readonly undone: readonly Step[];
}

/** A bench with its history. While something is dragged, `mark` is the desk as it was before. */
export interface Desk {
  readonly bench: Bench;
  readonly history: History;
  readonly mark: Desk | null;
}

/** A desk with this bench, and with nothing to undo unless a history is given. */
export function deskFor(bench: Bench, history: History = { done: [], undone: [] }): Desk {
  return { bench, history, mark: null };
}

/**
 * Makes an edit and remembers it; what was undone is forgotten. An edit with the group of the one before it becomes
 * one step with it. Refuses as `apply` does.
 */
export function perform(desk: Desk, edit: Edit, group: string | null = null): Outcome<Desk> {
  const applied = apply(desk.bench, edit);
  if (!applied.ok) return applied;
  const step: Step = { edit, inverse: applied.value.inverse, group };
  const { done, undone } = desk.history;
  const last = done.at(-1);
  const joins = last !== undefined && group !== null && last.group === group && undone.length === 0;
  const next = joins ? [...done.slice(0, -1), oneStep([last, step])] : [...done, step];
  return ok({ ...desk, bench: applied.value.bench, history: { done: next, undone: [] } });
}

/** Some steps that follow each other as one. */
function oneStep(steps: readonly Step[]): Step {
  return steps.reduce((first, second) => ({
    edit: joined(first.edit, second.edit),
    inverse: { ...joined(second.inverse, first.inverse), name: second.edit.name },
    group: second.group,
  }));
}

/** Undoes the last step by its stored inverse; a drag that is under way is kept first. Refuses `nothing-to-undo`. */
export function undo(desk: Desk): Outcome<Desk> {
  const { bench, history } = keep(desk);
  const step = history.done.at(-1);
  if (!step) return refuse("nothing-to-undo");
  const applied = apply(bench, step.inverse);
  if (!applied.ok) return applied;
  const undone = [...history.undone, sealed(step)];
  return ok(deskFor(applied.value.bench, { done: history.done.slice(0, -1), undone }));
}

/** Does the last undone step again. Refuses `nothing-to-redo`. */
export function redo(desk: Desk): Outcome<Desk> {
  const { bench, history } = keep(desk);
  const step = history.undone.at(-1);
  if (!step) return refuse("nothing-to-redo");
  const applied = apply(bench, step.edit);
  if (!applied.ok) return applied;
  const done = [...history.done, step];
  return ok(deskFor(applied.value.bench, { done, undone: history.undone.slice(0, -1) }));
}

/** Names for the buttons, such as "move relay K2"; null where there is nothing to undo or to do again. */
export function namesOf({ history }: Desk): { readonly undo: string | null; readonly redo: string | null } {
  return { undo: history.done.at(-1)?.edit.name ?? null, redo: history.undone.at(-1)?.edit.name ?? null };
}

// ---------------------------------------------------------------- drags

/** Begins a drag: what follows can be abandoned with `cancel`, or made one step with `keep`. */
export function mark(desk: Desk): Desk {
  const before = keep(desk);
  const { done, undone } = before.history;
  const last = done.at(-1);
  // Nothing of the drag may join what was done before it.
  const closed = last ? [...done.slice(0, -1), sealed(last)] : done;
  return { bench: before.bench, history: { done: closed, undone }, mark: before };
}

/** Abandons a drag: the desk as it was at the mark, what was undone included. Without a mark, the desk itself. */
export function cancel(desk: Desk): Desk {
  return desk.mark ?? desk;
}

/** Ends a drag: all that was done since the mark is one step. Without a mark, the desk itself. */
export function keep(desk: Desk): Desk {
  if (!desk.mark) return desk;
  const { done, undone } = desk.history;
  const from = desk.mark.history.done.length;
  const drag = done.slice(from);
  if (drag.length === 0) return desk.mark;
  return deskFor(desk.bench, { done: [...done.slice(0, from), sealed(oneStep(drag))], undone });
}

function sealed(step: Step): Step {
  return step.group === null ? step : { ...step, group: null };
}
