import { closeSync, copyFileSync, fstatSync, ftruncateSync, openSync, readSync, rmSync, writeSync } from "node:fs";
import Database from "better-sqlite3";
import type { Connection } from "../connect.ts";
import { readLog } from "./log.ts";

/** Size of a page in every library: that of SQLite's own (SQLite, pragma page_size). */
export const PAGE_BYTES = 4096;
/** Places in the head of a database (SQLite, Database File Format, section 1.3), and what stands there without a log. */
const JOURNAL = { at: 18, none: Buffer.from([1, 1]) };
const CHANGES_AT = 24;
const PAGES_AT = 28;
const VALID_FOR_AT = 92;

/**
 * Opens for reading what is left of a damaged library: a file of its own at `beside`, made of all pages there are, with
 * those in its log laid over. Where it does not tell its tables any more, a library that it once was is the `pattern` of them.
 * Null where even then nothing can be read. What is read may be wrong: only what proves itself may be believed.
 */
export function readableFrom(damaged: string, beside: string, pattern: string | null): Connection | null {
  rmSync(beside, { force: true });
  copyFileSync(damaged, beside);
  const handle = openSync(beside, "r+");
  try {
    layLogOver(handle, damaged);
    putHeadRight(handle);
    const plain = opened(beside);
    if (plain || pattern === null) return plain;
    layTablesOver(handle, pattern);
    putHeadRight(handle);
    return opened(beside);
  } finally {
    closeSync(handle);
  }
}

/** Closes what was opened for reading, and takes its file away. */
export function endReading(connection: Connection | null, beside: string): void {
  connection?.close();
  rmSync(beside, { force: true });
}

function opened(file: string): Connection | null {
  let connection: Connection | null = null;
  try {
    connection = new Database(file, { readonly: true });
    connection.pragma("trusted_schema = OFF");
    connection.pragma("cell_size_check = ON");
    connection.prepare("SELECT key FROM circuits LIMIT 0").all();
    return connection;
  } catch {
    connection?.close();
    return null;
  }
}

/** Pages of the log up to its last commit, whole or not: one that is not is still newer than what lies under it. */
function layLogOver(handle: number, damaged: string): void {
  const frames = readLog(damaged, PAGE_BYTES)?.frames ?? [];
  const end = frames.findLastIndex(({ pagesAfter }) => pagesAfter > 0);
  const most = Math.ceil(fstatSync(handle).size / PAGE_BYTES) + frames.length;
  for (const { page, bytes } of frames.slice(0, end + 1))
    if (page >= 1 && page <= most) writeSync(handle, bytes, 0, PAGE_BYTES, (page - 1) * PAGE_BYTES);
}

/** The pages in which a sound library tells what tables it has and where they begin. */
function layTablesOver(handle: number, pattern: string): void {
  const sound = new Database(pattern, { readonly: true });
  const from = openSync(pattern, "r");
  try {
    const pages = sound.prepare("SELECT pageno FROM dbstat WHERE name = 'sqlite_schema'").pluck().all() as number[];
    const bytes = Buffer.alloc(PAGE_BYTES);
    for (const page of pages) {
      readSync(from, bytes, 0, PAGE_BYTES, (page - 1) * PAGE_BYTES);
      writeSync(handle, bytes, 0, PAGE_BYTES, (page - 1) * PAGE_BYTES);
    }
  } finally {
    closeSync(from);
    sound.close();
  }
}

/** Has the head say how many pages there are, whole ones, and that there is no log. */
function putHeadRight(handle: number): void {
  const pages = Math.ceil(fstatSync(handle).size / PAGE_BYTES);
  ftruncateSync(handle, pages * PAGE_BYTES);
  const word = Buffer.alloc(4);
  readSync(handle, word, 0, 4, CHANGES_AT);
  writeSync(handle, word, 0, 4, VALID_FOR_AT);
  word.writeUInt32BE(pages);
  writeSync(handle, word, 0, 4, PAGES_AT);
  writeSync(handle, JOURNAL.none, 0, 2, JOURNAL.at);
}
