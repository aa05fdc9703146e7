import type { CircuitRow } from "../../../schemas/calls.ts";
import type { ListAsk, Listed } from "../library.ts";
import { queryOf } from "./search.ts";
import type { Session } from "./session.ts";
import { sql } from "./sql.ts";

const ROW = sql`c.id, c.title, c.vehicle, c.pages, c.parts, c.wires, c.problems, c.loose_ends AS "looseEnds", c.version,
  c.made, c.edited, r.opened, c.removed, CASE WHEN c.beside IS NULL THEN NULL ELSE c.beside_by END AS beside`;

/** Circuits with what this person opened last. */
const rows = ({ person }: Session) =>
  sql`FROM circuits c LEFT JOIN recent r ON r.circuit = c.key AND r.person = ${person}`;

/** Circuits with how many there are in all; newest edit first, or where something is searched the best match first. */
export async function listCircuits(session: Session, asked: ListAsk): Promise<Listed<CircuitRow>> {
  const { search, where, from, limit } = asked;
  const question = queryOf(search);
  if (search.trim() !== "" && question === null) return { rows: [], count: 0 };
  const isThere = where === "bin" ? sql`c.removed IS NOT NULL` : sql`c.removed IS NULL`;
  const isFound = question === null ? sql`` : sql`AND c.search @@ ${question}::tsquery`;
  // What stands in the title comes before what stands in the vehicle, however often a word is elsewhere.
  const best =
    question === null
      ? sql``
      : sql`c.search @@ ${queryOf(search, "A")}::tsquery DESC, c.search @@ ${queryOf(search, "AB")}::tsquery DESC,
          ts_rank('{0.05, 0.2, 0.5, 1}', c.search, ${question}::tsquery) DESC,`;
  const found = await session.all<CircuitRow>(sql`
    SELECT ${ROW} ${rows(session)} WHERE ${isThere} ${isFound}
      ORDER BY ${best} c.edited DESC, c.key DESC LIMIT ${limit} OFFSET ${from}`);
  const count = await session.first<{ readonly count: number }>(
    sql`SELECT count(*)::integer AS count FROM circuits c WHERE ${isThere} ${isFound}`,
  );
  return { rows: found, count: count?.count ?? 0 };
}

/** Circuits that this person opened last, newest first, without those in the bin. */
export function recentCircuits(session: Session, limit: number): Promise<CircuitRow[]> {
  return session.all(sql`
    SELECT ${ROW} ${rows(session)} WHERE r.opened IS NOT NULL AND c.removed IS NULL
      ORDER BY r.opened DESC, c.key DESC LIMIT ${limit}`);
}

/** The row of one circuit, in the bin or not. */
export async function circuitRow(session: Session, key: number): Promise<CircuitRow> {
  const row = await session.first<CircuitRow>(sql`SELECT ${ROW} ${rows(session)} WHERE c.key = ${key}`);
  if (!row) throw new Error("broken invariant: a circuit went while its row was held");
  return row;
}
