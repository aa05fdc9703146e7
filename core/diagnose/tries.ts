import type { Circuit, Condition, FunctionCheck } from "../circuit/circuit.ts";
import { controlAt } from "../circuit/points.ts";
import { conditionText } from "../live/condition.ts";
import { isDrain } from "./drain.ts";

/** The conditions worth probing in for a complaint, and the control whose positions are swept. */
export interface Tries {
  readonly conditions: readonly Condition[];
  readonly sweepOf: string | null;
  /** Positions of the swept control, one for each condition from the first on. */
  readonly positions: readonly string[];
  /** The vehicle sleeps and nothing may wake it: a battery goes flat. */
  readonly isAsleep: boolean;
}

/** Conditions of a complaint: every position of the control it throws last, all else as in the check. */
export function triesFor(circuit: Circuit, check: FunctionCheck): Tries {
  const thrown = Object.entries(check.condition.set ?? {});
  const last = thrown.at(-1);
  const control = last && controlAt(circuit, last[0]);
  if (!last || !control)
    return { conditions: [check.condition], sweepOf: null, positions: [""], isAsleep: isDrain(check, circuit) };
  const before = Object.fromEntries(thrown.slice(0, -1));
  const positions = control.control.positions.map((position) => position.name);
  const conditions = positions.map((position) => ({
    ...check.condition,
    set: position === control.rest ? before : { ...before, [last[0]]: position },
  }));
  return { conditions, sweepOf: last[0], positions, isAsleep: false };
}

/** A condition with the control it throws last at rest: what is heard is heard while that is thrown. */
export function restOf(condition: Condition): Condition {
  const thrown = Object.entries(condition.set ?? {});
  return { ...condition, set: Object.fromEntries(thrown.slice(0, -1)) };
}

/** Number of the condition tried that is the complaint's own. */
export function complaintNumber({ conditions }: Tries, complaint: Condition): number {
  const spelt = conditionText(complaint);
  return Math.max(
    0,
    conditions.findIndex((condition) => conditionText(condition) === spelt),
  );
}
