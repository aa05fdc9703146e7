import { constants, existsSync } from "node:fs";
import { access, mkdir, rename } from "node:fs/promises";
import { join } from "node:path";
import { type Outcome, ok, type Refusal, refuse } from "../../../core/base/outcome.ts";
import { isDamage, storeRefusal } from "../failure.ts";
import { copiesIn, makeCopy, makeDailyCopy, restoreCopy, stampOf } from "./backup.ts";
import { type Connection, connect, isEmpty, isOurs, isSound } from "./connect.ts";
import { applyUpgrades, pendingUpgrades } from "./upgrade.ts";
import { UPGRADES, type Upgrade } from "./upgrades.ts";

/** The open library. One process has it at a time. */
export interface Store {
  readonly connection: Connection;
  readonly folder: string;
  /** What the person must be told of how it was opened. */
  readonly notices: readonly Refusal[];
}

/** Name of the library's file in its folder. */
export const STORE_FILE = "wirefathom.db";

/**
 * Opens the library in a folder, which is made where it is missing, and brings it to its present form. A damaged file
 * is kept aside and the newest good copy takes its place, with a notice. Refuses `store-...` where it is held by
 * another, newer than this program, or cannot be written; then nothing was changed.
 */
export async function openStore(
  folder: string,
  now: Date,
  upgrades: readonly Upgrade[] = UPGRADES,
): Promise<Outcome<Store>> {
  try {
    await mkdir(folder, { recursive: true, mode: 0o700 });
    const file = join(folder, STORE_FILE);
    await mayWrite(folder, file);
    const found = (await isLost(folder, file)) ? null : soundConnection(file);
    if (found) return await upgraded({ connection: found, folder, notices: [] }, now, upgrades);
    const notice = await putRight(folder, file, now);
    return await upgraded({ connection: connect(file), folder, notices: [notice] }, now, upgrades);
  } catch (error) {
    const refusal = storeRefusal(error, folder);
    if (!refusal) throw error;
    return { ok: false, refusal };
  }
}

/** Closes the library; everything in it is in its one file then. */
export function closeStore({ connection }: Store): void {
  connection.close();
}

/** Makes the copy of the day unless it is there; gives what to tell the person where it cannot be made. */
export async function copyOfTheDay({ connection, folder }: Store, now: Date): Promise<Refusal | null> {
  try {
    await makeDailyCopy(connection, folder, now);
    return null;
  } catch (error) {
    if (!storeRefusal(error, folder)) throw error;
    return refuse("store-no-copy").refusal;
  }
}

/** Throws where folder or file may only be read: SQLite would open them and fail at the first edit. */
async function mayWrite(folder: string, file: string): Promise<void> {
  await access(folder, constants.W_OK);
  if (existsSync(file)) await access(file, constants.W_OK);
}

/** Nothing where a library was: SQLite would begin an empty one without a word. */
async function isLost(folder: string, file: string): Promise<boolean> {
  return isEmpty(file) && (await copiesIn(folder)).length > 0;
}

/** The database in the file, or null where it is damaged or another program's, which is not touched. */
function soundConnection(file: string): Connection | null {
  if (!isEmpty(file) && !isOurs(file)) return null;
  let connection: Connection;
  try {
    connection = connect(file);
  } catch (error) {
    if (!isDamage(error)) throw error;
    return null;
  }
  try {
    if (isSound(connection, "quick_check")) return connection;
  } catch (error) {
    connection.close();
    throw error;
  }
  connection.close();
  return null;
}

/** Keeps what is there aside, puts the newest good copy in its place, and says so. */
async function putRight(folder: string, file: string, now: Date): Promise<Refusal> {
  const wasThere = !isEmpty(file);
  const kept = `${file}.damaged-${stampOf(now)}`;
  for (const part of ["", "-wal", "-shm"]) {
    if (existsSync(file + part)) await rename(file + part, kept + part);
  }
  const copy = await restoreCopy(folder, file);
  if (!copy) return refuse("store-begun-anew", { kept }).refusal;
  return refuse(wasThere ? "store-restored" : "store-found-again", { kept, day: copy.day }).refusal;
}

/** The store in its present form; a library of an older form is copied before it is changed. */
async function upgraded(store: Store, now: Date, upgrades: readonly Upgrade[]): Promise<Outcome<Store>> {
  const { connection, folder } = store;
  try {
    const pending = pendingUpgrades(connection, upgrades);
    const isOlder = pending.ok && pending.value.length > 0 && pending.value.length < upgrades.length;
    if (isOlder) await makeCopy(connection, folder, now, `before-${pending.value[0]!.name}`);
    if (pending.ok) applyUpgrades(connection, pending.value, now);
    if (pending.ok) return ok(store);
    connection.close();
    return pending;
  } catch (error) {
    connection.close();
    throw error;
  }
}
