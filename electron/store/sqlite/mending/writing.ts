import type { Connection } from "../connect.ts";
import type { Row } from "./rows.ts";

/** What is written into a row, by the names of its columns. */
export type Columns = Readonly<Record<string, unknown>>;

/** Of a row that was read, what a table has columns for, but for some. */
export function fitting(connection: Connection, table: string, row: Row, without: readonly string[]): Columns {
  const columns = connection.pragma(`table_info(${table})`) as readonly { readonly name: string }[];
  const names = columns.flatMap(({ name }) => (name in row && !without.includes(name) ? [name] : []));
  return Object.fromEntries(names.map((name) => [name, row[name]]));
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
