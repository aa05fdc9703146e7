import { remember } from "../../base/memo.ts";
import type { Circuit, Condition } from "../../circuit/circuit.ts";
import { controlAt, controlsOf } from "../../circuit/points.ts";
import { conditionText } from "../../live/condition.ts";
import { keyOn } from "../tablePositions.ts";

/** More conditions than these are not tried for one circuit (our own bound): a panel of many switches has thousands. */
const MOST_CONDITIONS = 240;

/**
 * Conditions in which the drawing says what should happen: rest, the key on, every function check and scene in which nothing
 * is unplugged or taken out. Each once.
 */
export const intendedConditions: (circuit: Circuit) => readonly Condition[] = remember((circuit) => {
  const told = [...circuit.checks, ...circuit.scenes].map(({ condition }) => condition);
  return distinct(circuit, [{}, { set: keyOn(circuit) }, ...told.filter(isWhole)]);
});

/** Controls thrown and the engine running, and nothing else: all is plugged in and driven by the vehicle itself. */
function isWhole({ set: _, running: __, ...others }: Condition): boolean {
  return Object.keys(others).length === 0;
}

/** The intended conditions first, then each of them with one more control thrown; each once, at most 240. */
export const conditionsToTry: (circuit: Circuit) => readonly Condition[] = remember((circuit) => {
  const intended = intendedConditions(circuit);
  const thrown = intended.flatMap((condition) => oneThrown(circuit, condition));
  return distinct(circuit, [...intended, ...thrown]).slice(0, MOST_CONDITIONS);
});

/** A condition with each control in turn in each of its other positions. */
export function oneThrown(circuit: Circuit, condition: Condition): readonly Condition[] {
  return controlsOf(circuit).flatMap(({ key, control, rest }) =>
    control.positions.flatMap(({ name }) => {
      if (name === (condition.set?.[key] ?? rest)) return [];
      return [{ ...condition, set: { ...condition.set, [key]: name } }];
    }),
  );
}

/** Conditions that differ in what stands off its rest, the first of each kept; what stands at rest is left out of them. */
function distinct(circuit: Circuit, conditions: readonly Condition[]): readonly Condition[] {
  const found = new Map<string, Condition>();
  for (const condition of conditions) {
    const off = offRest(circuit, condition);
    const { set: _, ...others } = condition;
    const short: Condition = off.length > 0 ? { ...others, set: Object.fromEntries(off) } : others;
    const key = conditionText({ ...short, set: Object.fromEntries([...off].sort()) });
    if (!found.has(key)) found.set(key, short);
  }
  return [...found.values()];
}

/** Controls of a condition that do not stand at their rest, with their positions. */
export function offRest(circuit: Circuit, { set = {} }: Condition): readonly (readonly [string, string])[] {
  return Object.entries(set).filter(([key, name]) => controlAt(circuit, key)?.rest !== name);
}
