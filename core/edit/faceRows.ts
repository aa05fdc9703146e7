import { type Outcome, ok, type Refusal, refuse } from "../base/outcome.ts";
import type { Circuit, Connector } from "../circuit/circuit.ts";
import { connectorAt, parsePoint } from "../circuit/points.ts";

/** The face of a connector, seen from the wire side: names of its places row by row, "" for a gap. */
export type Rows = Connector["rows"];

/** Most rows of a face, places in a row, and characters of a name, as a circuit file takes them. */
const MOST_ROWS = 60;
const MOST_COLUMNS = 120;
const MOST_NAME = 40;
/** Names as terminals and cavities are stamped. */
const NAME = /^[^\s.,:=@~]+$/;

/** Whether a terminal or a cavity can be called so. */
export function isPlaceName(name: string): boolean {
  return NAME.test(name) && name.length <= MOST_NAME && !(name in Object.prototype);
}

/** The refusal `cavity-spelling` of the first name that no terminal or cavity can have, else null. */
export function placeNamesRefusal(names: readonly string[]): Refusal | null {
  const odd = names.find((name) => !isPlaceName(name));
  return odd === undefined ? null : refuse("cavity-spelling", { name: odd, most: MOST_NAME }).refusal;
}

/**
 * The rows of a face as typed, without spaces around the names. Refuses `rows-none`, `rows-many`, `cavity-spelling`, and
 * `twice` where two places have one name.
 */
export function rowsOf(typed: Rows): Outcome<Rows> {
  const rows = typed.map((row) => row.map((name) => name.trim()));
  const names = rows.flat().filter((name) => name !== "");
  if (names.length === 0) return refuse("rows-none");
  if (rows.length > MOST_ROWS || rows.some((row) => row.length > MOST_COLUMNS)) {
    return refuse("rows-many", { rows: MOST_ROWS, places: MOST_COLUMNS });
  }
  const odd = placeNamesRefusal(names);
  if (odd) return { ok: false, refusal: odd };
  const again = names.find((name, index) => names.indexOf(name) !== index);
  return again === undefined ? ok(rows) : refuse("twice", { what: "place", id: again });
}

/** Why an in-line joint cannot show these places: one of them lacks a side. Null where it can. */
export function inLineRefusal(circuit: Circuit, id: string, rows: Rows): Refusal | null {
  for (const place of rows.flat()) {
    for (const side of place === "" ? [] : ["a", "b"]) {
      const point = parsePoint(circuit, `${id}-${place}${side}`);
      if (!point.ok) return point.refusal;
    }
  }
  return null;
}

/** A connector whose places carry terminals. Refuses `point-connector`, and `connector-in-line` for a joint. */
export function plugOf(
  circuit: Circuit,
  id: string,
): Outcome<Connector & { readonly cavities: NonNullable<Connector["cavities"]> }> {
  const connector = connectorAt(circuit, id);
  if (!connector) return refuse("point-connector", { connector: id });
  const { cavities } = connector;
  return cavities ? ok({ ...connector, cavities }) : refuse("connector-in-line", { connector: id });
}
