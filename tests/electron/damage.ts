import { copyFileSync, mkdirSync, readFileSync, truncateSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import Database from "better-sqlite3";
import { onTestFinished } from "vitest";
import type { Refusal } from "../../core/base/outcome.ts";
import { addCircuit } from "../../electron/store/sqlite/circuits.ts";
import { listCircuits } from "../../electron/store/sqlite/list.ts";
import { closeStore, copyOfTheDay, openStore, STORE_FILE, type Store } from "../../electron/store/sqlite/open.ts";
import { saveCircuit } from "../../electron/store/sqlite/save.ts";
import { MORNING, ownFolder, value } from "./library.ts";
import { sample } from "./sample.ts";

/** Later on the same day. */
export const NOON = new Date("2026-03-02T12:00:00Z");

const ALL = { search: "", where: "library", from: 0, limit: 100 } as const;

/** An open library that is closed when the test ends. */
export async function openedStore(folder: string, now = MORNING): Promise<Store> {
  const store = value(await openStore(folder, now));
  onTestFinished(() => closeStore(store));
  return store;
}

/** Where a library lies. */
export interface Lying {
  readonly folder: string;
  readonly file: string;
}

/** A closed library: "Horn" in the copy of the morning, and since then "Horn later" in its place and "Blower" begun. */
export async function workedLibrary(): Promise<Lying> {
  const folder = ownFolder();
  const store = await openedStore(folder);
  await workedOn(store);
  closeStore(store);
  return { folder, file: join(folder, STORE_FILE) };
}

/** The same as it lies when the program is killed: the newest edits in the log beside the file. */
export async function killedLibrary(edits = 0): Promise<Lying> {
  const from = ownFolder();
  const store = await openedStore(from);
  const { id } = await workedOn(store);
  store.connection.pragma("wal_checkpoint(TRUNCATE)");
  for (let edit = 0; edit < edits; edit++) {
    const save = { version: 2 + edit, circuit: sample(`Edit ${edit + 1}`), name: "Rename" };
    store.connection.transaction(() => value(saveCircuit(store, id, save, NOON)))();
  }
  const folder = ownFolder();
  const file = join(folder, STORE_FILE);
  for (const ending of ["", "-wal"]) copyFileSync(join(from, STORE_FILE + ending), file + ending);
  mkdirSync(join(folder, "copies"));
  return { folder, file };
}

async function workedOn(store: Store): Promise<{ readonly id: string }> {
  const { id } = addCircuit(store, sample("Horn"), { name: "Begun" }, MORNING);
  const copied = await copyOfTheDay(store, MORNING);
  if (copied) throw new Error(copied.code);
  value(saveCircuit(store, id, { version: 1, circuit: sample("Horn later"), name: "Rename" }, NOON));
  addCircuit(store, sample("Blower", "5-blower"), { name: "Begun" }, NOON);
  return { id };
}

/** Titles in the library, in the order of the alphabet. */
export function titlesIn(store: Store): readonly string[] {
  return listCircuits(store, ALL)
    .rows.map((row) => row.title)
    .toSorted();
}

/** Codes of what the person is told. */
export function codesOf(notices: readonly Refusal[]): readonly string[] {
  return notices.map((notice) => notice.code);
}

/** Turns over the bits of so many bytes of a file. */
export function flip(file: string, at: number, length: number): void {
  const bytes = readFileSync(file);
  for (let i = at; i < Math.min(at + length, bytes.length); i++) bytes[i]! ^= 0xff;
  writeFileSync(file, bytes);
}

/** Turns over the page in which a table or an index begins, and those that hang on it. */
export function flipPagesOf(file: string, name: string): void {
  const beside = join(ownFolder(), "looked.db");
  copyFileSync(file, beside);
  const connection = new Database(beside);
  const pages = connection.prepare("SELECT pageno FROM dbstat WHERE name = ?").pluck().all(name) as number[];
  connection.close();
  if (pages.length === 0) throw new Error(`${name} has no page`);
  for (const page of pages) flip(file, (page - 1) * 4096, 4096);
}

/** Cuts a file to a share of its length, to a whole page or in the middle of one. */
export function cut(file: string, share: number): void {
  truncateSync(file, Math.floor(readFileSync(file).length * share));
}

/** Puts another program's database in a file's place. */
export function replaceByAnother(file: string): void {
  const other = join(ownFolder(), "other.db");
  const connection = new Database(other);
  connection.exec("CREATE TABLE notes (text); INSERT INTO notes VALUES ('mine')");
  connection.close();
  copyFileSync(other, file);
}
