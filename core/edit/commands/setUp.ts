import type { Outcome } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { Condition } from "../../circuit/circuit.ts";
import { conditionRefusal, conditionText } from "../../live/condition.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, atRest, editOf, isRest, trimmed } from "../editOf.ts";

/**
 * Sets a whole condition up from rest, as a row of the probe order, a column of a table or a scene has it. Refuses what
 * the circuit does not have, and `already-so`.
 */
export function setUp(bench: Bench, condition: Condition): Outcome<Edit> {
  const refusal = conditionRefusal(bench.circuit, condition);
  if (refusal) return { ok: false, refusal };
  const wanted = trimmed(condition);
  const text = conditionText(wanted);
  if (text === conditionText(bench.condition) && isRest(bench.before)) return alreadySo(text === "" ? "rest" : text);
  return editOf(bench, EDIT_NAMES.setUp(text), [
    { change: "bench", field: "before", value: atRest(bench) },
    { change: "bench", field: "condition", value: wanted },
  ]);
}
