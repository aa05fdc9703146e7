import type { ConnectorId } from "../../base/ids.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import { connectorAt } from "../../circuit/points.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";
import { labelOf } from "./relabelPart.ts";

/** Gives a connector another label; the empty text takes it away. Refuses `point-connector`, `label-long` and `already-so`. */
export function relabelConnector(bench: Bench, id: ConnectorId, typed: string): Outcome<Edit> {
  const connector = connectorAt(bench.circuit, id);
  if (!connector) return refuse("point-connector", { connector: id });
  const read = labelOf(typed);
  if (!read.ok) return read;
  const name = EDIT_NAMES.connector(id);
  if ((connector.label ?? "") === read.value) return alreadySo(name);
  const value = read.value === "" ? {} : { value: read.value };
  return editOf(bench, EDIT_NAMES.relabelPart(name), [
    { change: "item", list: "connectors", id, field: "label", ...value },
  ]);
}
