import { closeSync, openSync, readSync, statSync } from "node:fs";
import Database from "better-sqlite3";
import { isDamage, storeRefusal } from "../failure.ts";

/** An open database of SQLite. */
export type Connection = Database.Database;

/** Written into the head of every library, so that another program's database is not taken for one. */
export const APPLICATION_ID = 0x57465448;

/** Where it stands in the file, and the size of the head (SQLite, Database File Format, section 1.3). */
const ID_OFFSET = 68;
const HEAD_BYTES = 100;

/** How long to wait for another owner to let go, in milliseconds. */
const LOCK_WAIT = 300;

/**
 * Opens the database and takes it for this process alone until it is closed or the process ends. Every commit is on
 * the disk before it returns: left to itself, this build reopens a database in WAL with synchronous NORMAL. Throws what
 * SQLite says where the file is held by another, may not be written, or is no database.
 */
export function connect(file: string): Connection {
  // For this person's eyes, wherever its folder is; what SQLite lays beside it has the same rights.
  closeSync(openSync(file, "a", 0o600));
  const connection = new Database(file, { timeout: LOCK_WAIT });
  try {
    connection.pragma("locking_mode = EXCLUSIVE");
    // While a library is new, before WAL, so that its own file says whose it is from the first moment on.
    if (isEmpty(file)) connection.pragma(`application_id = ${APPLICATION_ID}`);
    connection.pragma("journal_mode = WAL");
    connection.pragma("synchronous = FULL");
    connection.pragma("foreign_keys = ON");
    connection.pragma("trusted_schema = OFF");
    connection.pragma("cell_size_check = ON");
    // A write that changes nothing: it takes the lock now, and fails now where the file may only be read.
    connection.exec("BEGIN IMMEDIATE; COMMIT");
    return connection;
  } catch (error) {
    connection.close();
    throw error;
  }
}

/** True where nothing is in the file, or there is none. */
export function isEmpty(file: string): boolean {
  return (statSync(file, { throwIfNoEntry: false })?.size ?? 0) === 0;
}

/** True where the file's head is that of a library of this program; the file is only read. */
export function isOurs(file: string): boolean {
  const head = Buffer.alloc(HEAD_BYTES);
  const handle = openSync(file, "r");
  try {
    readSync(handle, head, 0, HEAD_BYTES, 0);
  } finally {
    closeSync(handle);
  }
  return head.toString("latin1", 0, 16) === "SQLite format 3\0" && head.readUInt32BE(ID_OFFSET) === APPLICATION_ID;
}

/**
 * True where a database is whole. `check` names the pragma: the full one reads the indexes too. Throws where the disk does
 * not let it be read: that is no damage, and may be over at the next try.
 */
export function isSound(connection: Pick<Connection, "pragma">, check: "quick_check" | "integrity_check"): boolean {
  try {
    return connection.pragma(`${check}(1)`, { simple: true }) === "ok";
  } catch (error) {
    // Some damage, as to the head of the index, is not found but tripped over.
    if (error instanceof Database.SqliteError && (isDamage(error) || storeRefusal(error, "") === null)) return false;
    throw error;
  }
}
