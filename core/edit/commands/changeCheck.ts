import { type Outcome, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Bench } from "../bench.ts";
import { type CheckGiven, functionCheck } from "../checkFields.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";
import { itemChanges } from "../itemChanges.ts";

/** Changes some of a function check; what was noted of it stays. Refuses `no-check`, `already-so`, and as `functionCheck`. */
export function changeCheck(bench: Bench, id: string, given: Partial<CheckGiven>): Outcome<Edit> {
  const was = bench.circuit.checks.find((check) => check.id === id);
  if (!was) return refuse("no-check", { check: id });
  const now = functionCheck(bench, id, { ...was, ...given });
  if (!now.ok) return now;
  const changes = itemChanges("checks", was, now.value);
  if (changes.length === 0) return alreadySo(`"${was.label}"`);
  return editOf(bench, WIRING_NAMES.changeCheck(now.value.label), changes);
}
