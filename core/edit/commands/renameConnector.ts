import type { ConnectorId } from "../../base/ids.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import { connectorAt } from "../../circuit/points.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";
import { idRefusal } from "../ids.ts";
import { renaming } from "../renaming.ts";

/**
 * Gives a connector another id; wire ends, reach, conditions and faults of its cavities follow, and the part of an in-line
 * joint. Refuses `point-connector`, `already-so`, `id-empty`, `id-long`, `id-spelling` and `id-taken`.
 */
export function renameConnector(bench: Bench, id: ConnectorId, typed: string): Outcome<Edit> {
  if (!connectorAt(bench.circuit, id)) return refuse("point-connector", { connector: id });
  const next = typed.trim();
  if (next === id) return alreadySo(EDIT_NAMES.connector(id));
  const refusal = idRefusal(bench.circuit, next, "part");
  if (refusal) return { ok: false, refusal };
  return editOf(bench, EDIT_NAMES.rename(EDIT_NAMES.connector(id), next), renaming(bench, new Map([[id, next]])));
}
