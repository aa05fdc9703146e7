import Database from "better-sqlite3";
import type { Connection } from "../connect.ts";
import type { Row } from "./rows.ts";

/** What is written into a row, by the names of its columns. */
export type Columns = Readonly<Record<string, unknown>>;

/**
 * What is written in one go of rows that were read, or null where the library's own rules refuse it, as a value of another kind or
 * a number that another row has: then such a row is not believed, and nothing of it is written.
 */
export function writtenIf<T>(connection: Connection, write: () => T): T | null {
  try {
    return connection.transaction(write)();
  } catch (error) {
    const isRefused = error instanceof Database.SqliteError && /^SQLITE_(CONSTRAINT|MISMATCH)/.test(error.code);
    if (!isRefused) throw error;
    return null;
  }
}

/** Of a row that was read, what a table has columns for, but for some and for what is of another kind than its column. */
export function fitting(connection: Connection, table: string, row: Row, without: readonly string[]): Columns {
  const columns = connection.pragma(`table_info(${table})`) as readonly Column[];
  const names = columns.flatMap((column) =>
    column.name in row && !without.includes(column.name) && isOfKind(row[column.name], column) ? [column.name] : [],
  );
  return Object.fromEntries(names.map((name) => [name, row[name]]));
}

interface Column {
  readonly name: string;
  readonly type: string;
  readonly notnull: number;
}

function isOfKind(value: unknown, { type, notnull }: Column): boolean {
  if (value === null) return notnull === 0;
  if (type === "BLOB") return Buffer.isBuffer(value);
  if (type === "INTEGER") return Number.isInteger(value);
  return typeof value === (type === "TEXT" ? "string" : "number");
}

/** Writes a new row, or over the one with a number; gives the number of the new one. */
export function put(connection: Connection, table: string, columns: Columns, over?: number): number {
  const names = Object.keys(columns);
  const values = names.map((name) => columns[name]);
  if (over !== undefined) {
    const set = names.map((name) => `${name} = ?`).join(", ");
    connection.prepare(`UPDATE ${table} SET ${set} WHERE rowid = ?`).run(...values, over);
    return over;
  }
  const places = names.map(() => "?").join(", ");
  const insert = connection.prepare(`INSERT INTO ${table} (${names.join(", ")}) VALUES (${places})`);
  return Number(insert.run(...values).lastInsertRowid);
}
