import type { PartId } from "../base/ids.ts";
import type { Condition } from "../circuit/circuit.ts";
import type { Rig } from "./rig.ts";

/** States of parts by id, as plain data. A part that is not named is in the state it has at rest. */
export type PartStates = Readonly<Record<PartId, string>>;

/** Where a circuit stands, so that it can go on from there: the condition it was brought to, and what moved by then. */
export interface Standing {
  readonly condition: Condition;
  readonly states: PartStates;
}

/** States that a part leaves only by a person's hand: a fuse is replaced, a breaker reset. */
export const LEFT_BY_HAND: readonly string[] = ["melted", "tripped"];

/** The states a rig's parts stand in now. A part that a fault holds is left out: mended, it begins anew. */
export function statesOf(rig: Rig): PartStates {
  const states: Record<PartId, string> = {};
  for (const { part, kind } of rig.changeable) {
    const state = rig.states.get(part.id)!;
    if (state !== kind.start) states[part.id] = state;
  }
  return states;
}

/** Puts a rig where a circuit stood; nothing is solved yet. States of parts that are no longer there are passed over. */
export function resume(rig: Rig, { condition, states }: Standing): void {
  rig.toRest();
  rig.surround(condition);
  for (const [key, position] of Object.entries(condition.set ?? {})) rig.throwControl(key, position);
  for (const [id, state] of Object.entries(states)) {
    const placed = rig.network.parts.get(id);
    if (placed) rig.enter(placed, state);
  }
}
