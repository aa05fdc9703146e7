import type { ConnectorId, PointId } from "../../base/ids.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Circuit, Connector } from "../../circuit/circuit.ts";
import { connectorAt } from "../../circuit/points.ts";
import type { Bench } from "../bench.ts";
import type { Change } from "../change.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";
import { inLineRefusal, type Rows, rowsOf } from "../faceRows.ts";
import { type PinRow, pinList } from "../pinList.ts";

/**
 * Gives the wires in a connector's places the colours of a pasted pin list, and adds the places that it does not have. Rows
 * of the list with something wrong are passed over, as `pinList` shows them. Refuses `point-connector`, `pins-none`,
 * places that the face cannot take, and `already-so`.
 */
export function fillPins(bench: Bench, id: ConnectorId, text: string): Outcome<Edit> {
  const { circuit } = bench;
  const connector = connectorAt(circuit, id);
  if (!connector) return refuse("point-connector", { connector: id });
  const pins = pinList(text, circuit.colourCodes).filter(({ wrong }) => wrong === null);
  if (pins.length === 0) return refuse("pins-none");
  const rows = rowsOf(withPlaces(connector.rows, pins));
  if (!rows.ok) return rows;
  const refusal = connector.cavities ? null : inLineRefusal(circuit, id, rows.value);
  if (refusal) return { ok: false, refusal };
  const isWider = rows.value.flat().length > connector.rows.flat().length;
  const face: Change = { change: "item", list: "connectors", id, field: "rows", value: rows.value };
  const changes = [...(isWider ? [face] : []), ...pins.flatMap((pin) => coloured(circuit, connector, pin))];
  if (changes.length === 0) return alreadySo(id);
  return editOf(bench, WIRING_NAMES.fillPins(id), changes);
}

/** The face with the places it lacks: at the end of its one row, or as a row of their own below several. */
function withPlaces(rows: Rows, pins: readonly PinRow[]): Rows {
  const missing = pins.map(({ pin }) => pin).filter((pin) => !rows.flat().includes(pin));
  if (missing.length === 0) return rows;
  return rows.length === 1 ? [[...rows[0]!, ...missing]] : [...rows, missing];
}

function coloured({ wires }: Circuit, { id, cavities }: Connector, { pin, colour }: PinRow): readonly Change[] {
  if (colour === null) return [];
  const points: readonly PointId[] = cavities ? [`${id}-${pin}`] : [`${id}-${pin}a`, `${id}-${pin}b`];
  return wires
    .filter((wire) => (points.includes(wire.from) || points.includes(wire.to)) && wire.colour !== colour)
    .map((wire): Change => ({ change: "item", list: "wires", id: wire.id, field: "colour", value: colour }));
}
