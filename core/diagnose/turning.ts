import type { PartId } from "../base/ids.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { workOf } from "../live/live.ts";

const TURNS: readonly string[] = ["forward", "reverse"];

/** Motors that run in a condition of the good circuit. */
export function turningIn(circuit: Circuit, condition: Condition): readonly PartId[] {
  return [...workOf(circuit, condition)].flatMap(([id, { doing }]) => (TURNS.includes(doing) ? [id] : []));
}
