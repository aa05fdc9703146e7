import { existsSync } from "node:fs";
import { copyFile, rename, rm } from "node:fs/promises";
import { type Refusal, refuse } from "../../../../core/base/outcome.ts";
import { missingWords } from "../../../../core/base/words/damage.ts";
import type { Upgrade } from "../../upgradeStep.ts";
import { flushed, restoreCopy, stampOf, standAlone } from "../backup.ts";
import { connect, isEmpty } from "../connect.ts";
import type { Store } from "../store.ts";
import { applyUpgrades, pendingUpgrades } from "../upgrade.ts";
import { type BroughtOver, bringOver } from "./bringOver.ts";
import { commitsLost, readLog } from "./log.ts";
import { endReading, PAGE_BYTES, readableFrom } from "./readable.ts";
import { noLongerSuspect } from "./suspect.ts";

/** What a database has beside its file. */
const PARTS = ["", "-wal", "-shm"] as const;

/**
 * Puts a sound library in the place of a damaged or missing one, and says so: the newest good copy, with all that could still be
 * read from the damaged file, which is kept aside. Until the new one is whole nothing is moved: where the disk is full it
 * throws, and the next try finds all as it was.
 */
export async function putRight(
  { folder, file }: { readonly folder: string; readonly file: string },
  now: Date,
  upgrades: readonly Upgrade[],
): Promise<Refusal> {
  const wasThere = !isEmpty(file);
  const kept = `${file}.damaged-${stampOf(now)}`;
  const beside = `${file}.part`;
  await removed(beside);
  const copy = await restoreCopy(folder, beside, now);
  if (!copy && !wasThere) return refuse("store-begun-anew", { kept }).refusal;
  const over = wasThere ? overInto(beside, { folder, file, pattern: copy?.path ?? null }, now, upgrades) : null;
  await flushed(beside);
  await rename(beside, finishedAs(file));
  for (const part of PARTS) if (existsSync(file + part)) await rename(file + part, kept + part);
  await rename(finishedAs(file), file);
  await noLongerSuspect(file);
  if (!wasThere) return refuse("store-found-again", { kept, time: copy!.time }).refusal;
  return noticeOf(over, kept, copy?.time ?? null);
}

/** Puts a library in place that was made whole when the program was ended in the middle of that. */
export async function putRightBefore(file: string): Promise<void> {
  if (!existsSync(file) && existsSync(finishedAs(file))) await rename(finishedAs(file), file);
}

/**
 * Looks before SQLite does at the log of the newest edits, and keeps library and log aside where it would pass over some of
 * them; gives where, or null where it reads all there is.
 */
export async function logKeptAside(file: string, now: Date): Promise<string | null> {
  const log = isEmpty(file) ? null : readLog(file, PAGE_BYTES);
  if (!log || commitsLost(log) === 0) return null;
  const kept = `${file}.damaged-${stampOf(now)}`;
  for (const part of ["", "-wal"]) await copyFile(file + part, kept + part);
  return kept;
}

/** Takes away what was kept aside of a log. */
export async function letGoOfLog(kept: string): Promise<void> {
  for (const part of ["", "-wal"]) await rm(kept + part, { force: true });
}

/** Brings edits over that SQLite passed over, from where library and log were kept aside; gives what to tell the person. */
export function logPutRight(store: Store, kept: string): Refusal {
  const beside = `${kept}.reading`;
  const left = readableFrom(kept, beside, null);
  try {
    const over = left && bringOver(left, store);
    if (!over) return refuse("store-edits-lost", { kept }).refusal;
    const missing = missingWords(over.behind, over.lossy);
    return missing === ""
      ? refuse("store-edits-read", { kept }).refusal
      : refuse("store-edits-partly", { kept, missing }).refusal;
  } finally {
    endReading(left, beside);
  }
}

interface Damaged {
  readonly folder: string;
  readonly file: string;
  /** A copy that the damaged library once was. */
  readonly pattern: string | null;
}

/** Brings the library at `beside`, begun where there is none, to its present form, and over into it what is left of the damaged one. */
function overInto(
  beside: string,
  { folder, file, pattern }: Damaged,
  now: Date,
  upgrades: readonly Upgrade[],
): BroughtOver | null {
  if (!isInForm(beside, now, upgrades)) return null;
  const reading = `${file}.reading`;
  const left = readableFrom(file, reading, pattern ?? beside);
  if (!left) return null;
  const connection = connect(beside);
  try {
    return bringOver(left, { connection, folder, notices: [] });
  } finally {
    connection.close();
    endReading(left, reading);
  }
}

/** Upgrades the library at a place; false where a newer program wrote it. */
function isInForm(path: string, now: Date, upgrades: readonly Upgrade[]): boolean {
  const connection = connect(path);
  try {
    const pending = pendingUpgrades(connection, upgrades);
    if (pending.ok) applyUpgrades(connection, pending.value, now);
    if (!pending.ok) return false;
  } finally {
    connection.close();
  }
  standAlone(path);
  return true;
}

function noticeOf(over: BroughtOver | null, kept: string, time: string | null): Refusal {
  const missing = over ? missingWords(over.behind, over.lossy) : "";
  if (time !== null) {
    if (over === null) return refuse("store-restored", { kept, time }).refusal;
    return refuse(missing === "" ? "store-mended" : "store-mended-partly", { kept, time, missing }).refusal;
  }
  if (over === null || (over.brought.length === 0 && missing === ""))
    return refuse("store-begun-anew", { kept }).refusal;
  return refuse(missing === "" ? "store-read-out" : "store-read-out-partly", { kept, missing }).refusal;
}

async function removed(path: string): Promise<void> {
  for (const part of PARTS) await rm(path + part, { force: true });
}

/** Where a library lies that is whole and about to be put in its place. */
function finishedAs(file: string): string {
  return `${file}.mended`;
}
