import type { PartId } from "../base/ids.ts";
import { type Outcome, ok, refuse } from "../base/outcome.ts";
import { EXPECTED_WORDS } from "../base/words/wiring.ts";
import { EXPECTATIONS, type Expectation, type FunctionCheck } from "../circuit/circuit.ts";
import { partAt } from "../circuit/points.ts";
import { conditionRefusal } from "../live/condition.ts";
import type { Bench } from "./bench.ts";
import { trimmed } from "./editOf.ts";
import { liveNow } from "./liveNow.ts";
import { labelNeeded } from "./typed.ts";

/** What a person says of a function check. */
export type CheckGiven = Omit<FunctionCheck, "id">;

/** A function check of what a load should do in the present condition, with a label made of its name and that. */
export function checkFrom(bench: Bench, load: PartId, expect: Expectation): CheckGiven {
  const name = partAt(bench.circuit, load)?.label ?? load;
  return { label: `${name} ${EXPECTED_WORDS[expect]}`, condition: bench.condition, load, expect };
}

/**
 * A function check as it is written. Refuses `label-empty`, `label-long`, `label-taken` where another check has the label,
 * a condition that the circuit cannot be brought to, `part-unknown`, `check-without-work` for a part that does no work, and
 * `check-expects`.
 */
export function functionCheck(
  bench: Bench,
  id: string,
  { condition, load, expect, ...given }: CheckGiven,
): Outcome<FunctionCheck> {
  const { circuit } = bench;
  const read = labelNeeded(given.label);
  if (!read.ok) return read;
  const label = read.value;
  if (circuit.checks.some((check) => check.id !== id && check.label === label)) return refuse("label-taken", { label });
  const refusal = conditionRefusal(circuit, condition);
  if (refusal) return { ok: false, refusal };
  if (!partAt(circuit, load)) return refuse("part-unknown", { part: load });
  if ((liveNow(bench).good.parts.get(load)?.doing ?? null) === null)
    return refuse("check-without-work", { check: label, load });
  if (!EXPECTATIONS.includes(expect)) return refuse("check-expects", { expect, words: EXPECTATIONS.join(", ") });
  return ok({ id, label, condition: trimmed(condition), load, expect });
}
