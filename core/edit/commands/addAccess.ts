import { type Outcome, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import { type AccessGiven, accessGroup } from "../accessFields.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { editOf } from "../editOf.ts";
import { wordId } from "../wordId.ts";

/**
 * Adds an access group under an id made from its label. Refuses `label-taken` where a group has the label, and what
 * `accessGroup` refuses.
 */
export function addAccess(bench: Bench, given: AccessGiven): Outcome<Edit> {
  const { access } = bench.circuit;
  const group = accessGroup(bench.circuit, wordId(access, given.label, "access"), given);
  if (!group.ok) return group;
  const { label } = group.value;
  if (access.some((each) => each.label === label)) return refuse("label-taken", { label });
  return editOf(bench, WIRING_NAMES.addAccess(label), [
    { change: "add", list: "access", at: access.length, item: group.value },
  ]);
}
