import type { ConnectorId } from "../../base/ids.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Connector } from "../../circuit/circuit.ts";
import { connectorAt, isInLine, partAt } from "../../circuit/points.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { editOf } from "../editOf.ts";
import { inLineRefusal, type Rows, rowsOf } from "../faceRows.ts";
import { idRefusal, nextId, takenIds } from "../ids.ts";
import { labelOf } from "./relabelPart.ts";

/** What a new connector is given; without an id it takes the next free one. */
export interface ConnectorGiven {
  readonly id?: ConnectorId;
  readonly label?: string;
  readonly rows: Rows;
}

/**
 * Adds a connector with empty places, or the face of an in-line joint that has none yet. Refuses an id that is taken or
 * misspelled, `label-long`, and rows as `rowsOf` does.
 */
export function addConnector(bench: Bench, given: ConnectorGiven): Outcome<Edit> {
  const { circuit } = bench;
  const rows = rowsOf(given.rows);
  if (!rows.ok) return rows;
  const label = labelOf(given.label ?? "");
  if (!label.ok) return label;
  const id = given.id?.trim() || nextId("X", takenIds(circuit));
  const part = partAt(circuit, id);
  const isFace = part !== undefined && isInLine(part);
  if (isFace && connectorAt(circuit, id)) return refuse("id-taken", { id });
  const refusal = isFace ? inLineRefusal(circuit, id, rows.value) : idRefusal(circuit, id, "part");
  if (refusal) return { ok: false, refusal };
  const item: Connector = {
    id,
    ...(label.value !== "" && { label: label.value }),
    rows: rows.value,
    ...(!isFace && { cavities: {} }),
  };
  return editOf(bench, WIRING_NAMES.addConnector(id), [
    { change: "add", list: "connectors", at: circuit.connectors.length, item },
  ]);
}
