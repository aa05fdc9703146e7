import type { ConnectorId } from "../../base/ids.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { conditionEdit } from "../editOf.ts";

/** Pushes a plug or an in-line joint home. Refuses `not-apart`. */
export function pushHome(bench: Bench, connector: ConnectorId): Outcome<Edit> {
  const apart = bench.condition.apart ?? [];
  if (!apart.includes(connector)) return refuse("not-apart", { connector });
  return conditionEdit(bench, EDIT_NAMES.pushHome(connector), { apart: apart.filter((id) => id !== connector) });
}
