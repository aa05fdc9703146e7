import type { ConnectorId } from "../../base/ids.ts";
import type { Outcome } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, conditionEdit } from "../editOf.ts";

/** Pulls a plug or an in-line joint apart. Refuses `condition-connector` and `already-so`. */
export function pullApart(bench: Bench, connector: ConnectorId): Outcome<Edit> {
  const apart = bench.condition.apart ?? [];
  if (apart.includes(connector)) return alreadySo(`${connector} apart`);
  return conditionEdit(bench, EDIT_NAMES.pullApart(connector), { apart: [...apart, connector] });
}
