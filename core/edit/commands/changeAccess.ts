import { type Outcome, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import { type AccessGiven, accessGroup } from "../accessFields.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";
import { itemChanges } from "../itemChanges.ts";

/**
 * Changes some of an access group: label, minutes, hands, what comes before it, cautions. Refuses `access-unknown`,
 * `already-so`, and what `accessGroup` refuses.
 */
export function changeAccess(bench: Bench, id: string, given: Partial<AccessGiven>): Outcome<Edit> {
  const was = bench.circuit.access.find((group) => group.id === id);
  if (!was) return refuse("access-unknown", { access: id });
  const now = accessGroup(bench.circuit, id, { ...was, ...given });
  if (!now.ok) return now;
  const changes = itemChanges("access", was, now.value);
  if (changes.length === 0) return alreadySo(was.label);
  return editOf(bench, WIRING_NAMES.changeAccess(now.value.label), changes);
}
