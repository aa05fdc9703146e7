import type { ControlKey } from "../../base/ids.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import { controlAt } from "../../circuit/points.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { conditionEdit } from "../editOf.ts";
import { positionNow, thrown } from "./throwControl.ts";

/** Lets go of a control that is held: it springs back. Refuses `not-held`. */
export function letGo(bench: Bench, control: ControlKey): Outcome<Edit> {
  const positions = controlAt(bench.circuit, control)?.control.positions ?? [];
  const held = positions.find(({ name }) => name === positionNow(bench, control));
  if (held?.springsBackTo === undefined) return refuse("not-held", { control });
  return conditionEdit(bench, EDIT_NAMES.letGo(control), thrown(bench, control, held.springsBackTo));
}
