import { copyFile, mkdir, open, readdir, rename, rm } from "node:fs/promises";
import { join } from "node:path";
import Database from "better-sqlite3";
import { type Connection, isOurs, isSound } from "./connect.ts";

/** Copies that are kept; the oldest goes when one more is made. */
const KEPT = 10;
const FOLDER = "copies";
const DAY_MS = 86_400_000;
/** A copy that is being made. Always the same name, so that one cut off is written over by the next. */
const UNDER_WAY = "under-way.part";
const NAME = /^((\d{4}-\d{2}-\d{2})T(\d{2})(\d{2})(\d{2})Z)-.*\.db$/;

/** A copy of the library. */
export interface Copy {
  readonly path: string;
  readonly made: Date;
  /** The day it was made, as 2026-01-31. */
  readonly day: string;
  /** The same with the time, on this machine's clock: 2026-01-31, 08:15. */
  readonly time: string;
}

/** Copies of the library in this folder, newest first; they may be damaged. */
export async function copiesIn(folder: string): Promise<readonly Copy[]> {
  const names = await readdir(join(folder, FOLDER)).catch(() => []);
  return names
    .toSorted()
    .reverse()
    .flatMap((name) => {
      const [, stamp, day, hours, minutes, seconds] = NAME.exec(name) ?? [];
      if (stamp === undefined || day === undefined) return [];
      const made = new Date(`${day}T${hours}:${minutes}:${seconds}Z`);
      return [{ path: join(folder, FOLDER, name), made, day, time: timeOf(made) }];
    });
}

/** Copies in the order in which they are trusted: newest first, and last those of a clock that was ahead, whenever they were made. */
async function trusted(folder: string, now: Date): Promise<readonly Copy[]> {
  const copies = await copiesIn(folder);
  const isAhead = ({ made }: Copy): boolean => made.getTime() > now.getTime() + DAY_MS;
  return [...copies.filter((copy) => !isAhead(copy)), ...copies.filter(isAhead)];
}

/**
 * Makes a copy beside its place, trusts it only after it was read whole, and then lets the oldest go. `why` becomes part
 * of the name. Throws what the disk or SQLite says where it cannot be made.
 */
export async function makeCopy(connection: Connection, folder: string, now: Date, why: string): Promise<Copy> {
  await mkdir(join(folder, FOLDER), { recursive: true, mode: 0o700 });
  const stamp = stampOf(now);
  const path = join(folder, FOLDER, `${stamp}-${why}.db`);
  const beside = join(folder, FOLDER, UNDER_WAY);
  await rm(beside, { force: true });
  try {
    await connection.backup(beside);
    standAlone(beside);
    if (!isGoodCopy(beside)) throw Object.assign(new Error("the copy is not whole"), { code: "SQLITE_IOERR" });
    await flushed(beside);
    await rename(beside, path);
  } finally {
    await rm(beside, { force: true });
  }
  const copies = await trusted(folder, now);
  for (const { path } of copies.slice(KEPT)) await rm(path, { force: true });
  return { path, made: now, day: stamp.slice(0, 10), time: timeOf(now) };
}

/** Makes today's copy unless there is one; those of a library in which nothing was yet are none. */
export async function makeDailyCopy(connection: Connection, folder: string, now: Date): Promise<void> {
  const isThere = (await copiesIn(folder)).some(({ day }) => day === stampOf(now).slice(0, 10));
  if (!isThere || (await isInNoCopy(connection, folder))) await makeCopy(connection, folder, now, "day");
}

/** True for a library that has circuits of which no copy knows, as on the first day. */
export async function isInNoCopy(connection: Connection, folder: string): Promise<boolean> {
  return holdsCircuits(connection) && (await copiesIn(folder)).every(({ path }) => isCopyOfNothing(path));
}

function holdsCircuits(connection: Connection): boolean {
  return connection.prepare("SELECT 1 FROM circuits LIMIT 1").get() !== undefined;
}

/** False too where the copy cannot be read: that is for whoever needs it. */
function isCopyOfNothing(path: string): boolean {
  try {
    const connection = new Database(path, { readonly: true, fileMustExist: true });
    try {
      return !holdsCircuits(connection);
    } finally {
      connection.close();
    }
  } catch {
    return false;
  }
}

/** Copies the newest good copy to a place; null where there is none. The copy itself stays. */
export async function restoreCopy(folder: string, to: string, now: Date): Promise<Copy | null> {
  const copies = await trusted(folder, now);
  const good = copies.find(({ path }) => isGoodCopy(path));
  if (!good) return null;
  await copyFile(good.path, to);
  return good;
}

/** Takes a database out of WAL: left in it, it would get two more files beside it each time it is looked at. */
export function standAlone(path: string): void {
  const connection = new Database(path);
  try {
    connection.pragma("locking_mode = EXCLUSIVE");
    connection.pragma("journal_mode = DELETE");
  } finally {
    connection.close();
  }
}

function isGoodCopy(path: string): boolean {
  try {
    if (!isOurs(path)) return false;
    const connection = new Database(path, { readonly: true, fileMustExist: true });
    try {
      return isSound(connection, "integrity_check");
    } finally {
      connection.close();
    }
  } catch {
    return false;
  }
}

/** Puts what was written to a file on the disk. */
export async function flushed(path: string): Promise<void> {
  const handle = await open(path, "r+");
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** A moment as it stands in the name of a file: sorts by time, holds no colon. */
export function stampOf(now: Date): string {
  return now.toISOString().replace(/:/g, "").replace(/\.\d+/, "");
}

/** A moment as a person reads it on this machine's clock: 2026-01-31, 08:15. */
function timeOf(moment: Date): string {
  const two = (number: number): string => String(number).padStart(2, "0");
  // Joined so that no line ends in the middle of it.
  const day = [moment.getFullYear(), two(moment.getMonth() + 1), two(moment.getDate())].join("\u2011");
  return `${day},\u00a0${two(moment.getHours())}:${two(moment.getMinutes())}`;
}
