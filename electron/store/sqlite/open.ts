import { constants, existsSync } from "node:fs";
import { access, mkdir } from "node:fs/promises";
import { join } from "node:path";
import { type Outcome, ok, type Refusal, refuse } from "../../../core/base/outcome.ts";
import { isDamage, storeRefusal } from "../failure.ts";
import type { Upgrade } from "../upgradeStep.ts";
import { copiesIn, isInNoCopy, makeCopy, makeDailyCopy } from "./backup.ts";
import { type Connection, connect, isEmpty, isOurs, isSound } from "./connect.ts";
import { letGoOfLog, logKeptAside, logPutRight, putRight, putRightBefore } from "./mending/putRight.ts";
import { isSuspect } from "./mending/suspect.ts";
import type { Store } from "./store.ts";
import { applyUpgrades, pendingUpgrades } from "./upgrade.ts";
import { UPGRADES } from "./upgrades.ts";

export type { Store } from "./store.ts";

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
    await putRightBefore(file);
    if ((await isLost(folder, file)) || isSuspect(file)) return await openedRight(folder, file, now, upgrades);
    const kept = await logKeptAside(file, now);
    const found = await soundConnection(file, kept);
    if (!found) return await openedRight(folder, file, now, upgrades);
    const store = await upgraded({ connection: found, folder, notices: [] }, now, upgrades);
    if (!store.ok || kept === null) return store;
    return ok({ ...store.value, notices: [logPutRight(store.value, kept)] });
  } catch (error) {
    const refusal = storeRefusal(error, folder);
    if (!refusal) throw error;
    return { ok: false, refusal };
  }
}

async function openedRight(
  folder: string,
  file: string,
  now: Date,
  upgrades: readonly Upgrade[],
): Promise<Outcome<Store>> {
  const notice = await putRight({ folder, file }, now, upgrades);
  return await upgraded({ connection: connect(file), folder, notices: [notice] }, now, upgrades);
}

/** Closes the library; everything in it is in its one file then. */
export function closeStore({ connection }: Store): void {
  connection.close();
}

/**
 * Makes the copy of the day unless it is there, and one of a library that was put right; gives what to tell the person where
 * it cannot be made.
 */
export async function copyOfTheDay({ connection, folder, notices }: Store, now: Date): Promise<Refusal | null> {
  try {
    if (notices.length > 0) await makeCopy(connection, folder, now, "put-right");
    else await makeDailyCopy(connection, folder, now);
    return null;
  } catch (error) {
    if (!storeRefusal(error, folder)) throw error;
    return refuse("store-no-copy").refusal;
  }
}

/** Makes a copy at the end of a library's first day, of which there is none but of an empty one. Where it cannot be made the next start tells. */
export async function copyOfFirstDay({ connection, folder }: Store, now: Date): Promise<void> {
  try {
    if (await isInNoCopy(connection, folder)) await makeCopy(connection, folder, now, "day");
  } catch (error) {
    if (!storeRefusal(error, folder)) throw error;
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

/**
 * The database in the file, or null where it is damaged or another program's, which is not touched. What was kept aside of
 * its log is let go of again where it is not opened.
 */
async function soundConnection(file: string, kept: string | null): Promise<Connection | null> {
  let sound: Connection | null = null;
  try {
    sound = isEmpty(file) || isOurs(file) ? connectedSound(file) : null;
    return sound;
  } finally {
    if (!sound && kept !== null) await letGoOfLog(kept);
  }
}

function connectedSound(file: string): Connection | null {
  let connection: Connection | null = null;
  let isGood = false;
  try {
    connection = connect(file);
    isGood = isSound(connection, "quick_check");
    return isGood ? connection : null;
  } catch (error) {
    if (connection || !isDamage(error)) throw error;
    return null;
  } finally {
    if (!isGood) connection?.close();
  }
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
