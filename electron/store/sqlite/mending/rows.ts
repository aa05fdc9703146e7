import Database from "better-sqlite3";
import type { Connection } from "../connect.ts";

/** A row as it was read, by the names of its columns. */
export type Row = Readonly<Record<string, unknown>> & { readonly rowNumber: number };

/** Rows that were read, and whether some could not be. */
export interface RowsRead {
  readonly rows: readonly Row[];
  readonly hasGaps: boolean;
}

/** Numbers that are tried one by one after the last row that could be read: more than lie in one damaged page. */
const MOST_TRIED = 5_000;

/** All rows of a table that can still be read, in the order of their numbers. A table that is not there has none. */
export function rowsLeft(connection: Connection, table: string, columns = "*"): RowsRead {
  const rows: Row[] = [];
  const select = `SELECT rowid AS rowNumber, ${columns} FROM ${table} WHERE`;
  let last = Number.MIN_SAFE_INTEGER;
  let tried = 0;
  let hasGaps = false;
  while (tried <= MOST_TRIED) {
    const next = rowOrDamaged(connection, `${select} rowid > ? ORDER BY rowid LIMIT 1`, last);
    if (next === null) break;
    // What lies in a damaged tree may be found again and again.
    if (next !== "damaged" && next.rowNumber > last) {
      rows.push(next);
      last = next.rowNumber;
      tried = 0;
      continue;
    }
    hasGaps = true;
    last = Math.max(last, 0) + 1;
    tried += 1;
    const exact = rowOrDamaged(connection, `${select} rowid = ?`, last);
    if (exact !== null && exact !== "damaged") {
      rows.push(exact);
      tried = 0;
    }
  }
  return { rows, hasGaps };
}

/** One row by a question with one thing asked for; null where there is none, or no such table, or it cannot be read. */
export function rowLeft(connection: Connection, question: string, asked: unknown): Row | null {
  const row = rowOrDamaged(connection, question, asked);
  return row === "damaged" ? null : row;
}

/** The same, but for a row that cannot be read. */
export function rowOrDamaged(connection: Connection, question: string, asked: unknown): Row | null | "damaged" {
  try {
    return (connection.prepare(question).get(asked) as Row | undefined) ?? null;
  } catch (error) {
    if (!(error instanceof Database.SqliteError)) throw error;
    // "no such table" and "no such column": a library of an older form.
    return error.code === "SQLITE_ERROR" ? null : "damaged";
  }
}
