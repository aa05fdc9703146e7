import type { CircuitRow } from "../../../schemas/calls.ts";
import type { ListAsk, Listed } from "../library.ts";
import type { Store } from "./open.ts";
import { searchOf } from "./search.ts";

const ROW = `c.id, c.title, c.vehicle, c.pages, c.parts, c.wires, c.problems, c.loose_ends AS looseEnds, c.version,
  c.made, c.edited, r.opened, c.removed, CASE WHEN c.beside IS NULL THEN NULL ELSE c.beside_by END AS beside`;
const ROWS = `FROM circuits c LEFT JOIN recent r ON r.circuit = c.key`;

/** Circuits with how many there are in all; newest edit first, or where something is searched the best match first. */
export function listCircuits({ connection }: Store, { search, where, from, limit }: ListAsk): Listed<CircuitRow> {
  const isThere = where === "bin" ? "c.removed IS NOT NULL" : "c.removed IS NULL";
  if (search.trim() === "") {
    const rows = connection.prepare(
      `SELECT ${ROW} ${ROWS} WHERE ${isThere} ORDER BY c.edited DESC, c.key DESC LIMIT ? OFFSET ?`,
    );
    const count = connection.prepare(`SELECT count(*) FROM circuits c WHERE ${isThere}`).pluck();
    return { rows: rows.all(limit, from) as CircuitRow[], count: count.get() as number };
  }
  const question = searchOf(search);
  if (question === null) return { rows: [], count: 0 };
  // The bin is small, so what is in it is set against the index instead of joining every find.
  const inBin = `rowid ${where === "bin" ? "IN" : "NOT IN"} (SELECT key FROM circuits WHERE removed IS NOT NULL)`;
  const rows = connection.prepare(
    `SELECT ${ROW} FROM (SELECT rowid, rank FROM search WHERE search MATCH ? AND ${inBin} ORDER BY rank LIMIT ? OFFSET ?) s
       JOIN circuits c ON c.key = s.rowid LEFT JOIN recent r ON r.circuit = c.key ORDER BY s.rank, c.edited DESC`,
  );
  const count = connection.prepare(`SELECT count(*) FROM search WHERE search MATCH ? AND ${inBin}`).pluck();
  return { rows: rows.all(question, limit, from) as CircuitRow[], count: count.get(question) as number };
}

/** Circuits that were opened last, newest first, without those in the bin. */
export function recentCircuits({ connection }: Store, limit: number): CircuitRow[] {
  const rows = connection.prepare(`SELECT ${ROW} ${ROWS} WHERE r.opened IS NOT NULL AND c.removed IS NULL
    ORDER BY r.opened DESC, c.key DESC LIMIT ?`);
  return rows.all(limit) as CircuitRow[];
}

/** The row of one circuit, in the bin or not. */
export function circuitRow({ connection }: Store, key: number): CircuitRow {
  return connection.prepare(`SELECT ${ROW} ${ROWS} WHERE c.key = ?`).get(key) as CircuitRow;
}
