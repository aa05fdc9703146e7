import type { ControlKey } from "../../base/ids.ts";
import type { Outcome } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { Circuit, Condition } from "../../circuit/circuit.ts";
import { controlAt } from "../../circuit/points.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, conditionEdit, without } from "../editOf.ts";

/** Throws a control to a position. Refuses `condition-control`, `condition-position`, and `already-so`. */
export function throwControl(bench: Bench, control: ControlKey, position: string): Outcome<Edit> {
  if (positionNow(bench, control) === position) return alreadySo(`${control} ${position}`);
  return conditionEdit(bench, EDIT_NAMES.throwControl(control, position), thrown(bench, control, position));
}

/** The position in which a control is thought to stand; undefined where there is no such control. */
export function positionNow({ circuit, condition }: Bench, control: ControlKey): string | undefined {
  return condition.set?.[control] ?? controlAt(circuit, control)?.rest;
}

/** What a condition sets once a control is thrown: what is thrown last stands last, what is back at rest is not named. */
export function thrown(
  { circuit, condition }: { readonly circuit: Circuit; readonly condition: Condition },
  control: ControlKey,
  position: string,
): Pick<Condition, "set"> {
  const others = without(condition.set, control);
  return { set: position === controlAt(circuit, control)?.rest ? others : { ...others, [control]: position } };
}
