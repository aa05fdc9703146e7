import type { Outcome } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Bench } from "../bench.ts";
import { type CheckGiven, functionCheck } from "../checkFields.ts";
import type { Edit } from "../edit.ts";
import { editOf } from "../editOf.ts";
import { wordId } from "../wordId.ts";

/** Adds a function check under an id made from its label; `checkFrom` makes one of the present condition. Refuses as `functionCheck`. */
export function addCheck(bench: Bench, given: CheckGiven): Outcome<Edit> {
  const { checks } = bench.circuit;
  const check = functionCheck(bench, wordId(checks, given.label, "check"), given);
  if (!check.ok) return check;
  return editOf(bench, WIRING_NAMES.addCheck(check.value.label), [
    { change: "add", list: "checks", at: checks.length, item: check.value },
  ]);
}
