import { type Outcome, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import { isReachable } from "../../circuit/checkReach.ts";
import type { Reach } from "../../circuit/circuit.ts";
import { workFields } from "../accessFields.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";
import { labelOf } from "./relabelPart.ts";

/**
 * Says how a part, connector, cavity or terminal is reached: where it is, access group, minutes, hands, why not to probe it, cautions. What
 * is said replaces what was; nothing said, or null, takes it away. Refuses `reach-unknown`, `access-unknown`,
 * `minutes-limits`, `hands-count`, wrong cautions, `label-long` and `already-so`.
 */
export function setReach(bench: Bench, key: string, given: Reach | null): Outcome<Edit> {
  const { circuit } = bench;
  if (!isReachable(circuit, key)) return refuse("reach-unknown", { key });
  const { where, access, doNotProbe, ...work } = given ?? {};
  if (access !== undefined && circuit.access.every(({ id }) => id !== access))
    return refuse("access-unknown", { access });
  const reason = labelOf(doNotProbe ?? "");
  if (!reason.ok) return reason;
  const spot = labelOf(where ?? "");
  if (!spot.ok) return spot;
  const fields = workFields(work);
  if (!fields.ok) return fields;
  const value: Reach = {
    ...(spot.value !== "" && { where: spot.value }),
    ...(access !== undefined && { access }),
    ...fields.value,
    ...(reason.value !== "" && { doNotProbe: reason.value }),
  };
  const isEmpty = Object.keys(value).length === 0;
  if (JSON.stringify(sorted(circuit.reach[key] ?? {})) === JSON.stringify(sorted(value))) return alreadySo(key);
  return editOf(bench, WIRING_NAMES.setReach(key), [
    { change: "entry", record: "reach", key, ...(!isEmpty && { value }) },
  ]);
}

function sorted(reach: Reach): readonly (readonly [string, unknown])[] {
  return Object.entries(reach).sort(([one], [other]) => (one < other ? -1 : 1));
}
