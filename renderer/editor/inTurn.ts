import type { Outcome } from "../../core/base/outcome.ts";
import { apply, type Edit, joined } from "../../core/edit/edit.ts";
import type { Command } from "../state/action.ts";

/**
 * Commands one after the other as one edit, named as the first: each is asked of the bench that those before it leave.
 * Refuses where one of them does; then nothing is changed.
 */
export function inTurn(first: Command, ...others: readonly Command[]): Command {
  return (bench): Outcome<Edit> => {
    const edit = first(bench);
    if (!edit.ok) return edit;
    let all = edit.value;
    let applied = apply(bench, edit.value);
    for (const command of others) {
      if (!applied.ok) return applied;
      const next = command(applied.value.bench);
      if (!next.ok) return next;
      all = joined(all, next.value);
      applied = apply(applied.value.bench, next.value);
    }
    return { ok: true, value: { ...all, name: edit.value.name } };
  };
}
