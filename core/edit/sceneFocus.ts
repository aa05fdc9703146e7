import type { PartId } from "../base/ids.ts";
import { type Refusal, refuse } from "../base/outcome.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { partAt } from "../circuit/points.ts";

/** Why these parts cannot be the focus of a scene: one of them is not there. Null where all are. */
export function focusRefusal(circuit: Circuit, focus: readonly PartId[]): Refusal | null {
  const part = focus.find((id) => partAt(circuit, id) === undefined);
  return part === undefined ? null : refuse("part-unknown", { part }).refusal;
}
