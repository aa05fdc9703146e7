import { copyFileSync, existsSync, mkdtempSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Outcome, ok, refuse } from "../../../core/base/outcome.ts";
import { storeRefusal } from "../failure.ts";
import type { Library } from "../library.ts";
import { sqliteLibrary } from "./library.ts";
import { commitsLost, readLog } from "./mending/log.ts";
import { PAGE_BYTES } from "./mending/readable.ts";
import { closeStore, openStore, STORE_FILE } from "./open.ts";

/** Times that files are copied until nothing was written to them meanwhile. */
const TRIES = 5;

/** A library as it stood at a moment, on its own: what is done to it goes with it. */
export interface Snapshot {
  readonly library: Library;
  /** Milliseconds that it took to make. */
  readonly tookMs: number;
  close(): void;
}

/**
 * A snapshot of a library that another process has open, its newest edits included. Refuses `store-locked` where none can be had, as where
 * there is no room for it.
 */
export async function snapshotOf(folder: string, now: Date): Promise<Outcome<Snapshot>> {
  try {
    return await snapshotIn(mkdtempSync(join(tmpdir(), "wirefathom-looked-at-")), folder, now);
  } catch (error) {
    if (!storeRefusal(error, folder)) throw error;
    return refuse("store-locked");
  }
}

async function snapshotIn(place: string, folder: string, now: Date): Promise<Outcome<Snapshot>> {
  const letGo = (): void => rmSync(place, { recursive: true, force: true, maxRetries: 3 });
  const begun = performance.now();
  try {
    if (!isCopied(join(folder, STORE_FILE), join(place, STORE_FILE))) {
      letGo();
      return refuse("store-locked");
    }
    const opened = await openStore(place, now);
    if (!opened.ok || opened.value.notices.length > 0) {
      if (opened.ok) closeStore(opened.value);
      letGo();
      return opened.ok ? refuse("store-locked") : opened;
    }
    const store = opened.value;
    const close = (): void => {
      closeStore(store);
      letGo();
    };
    return ok({ library: sqliteLibrary(store), tookMs: performance.now() - begun, close });
  } catch (error) {
    letGo();
    throw error;
  }
}

/** Copies a library with its log; false where it was written to each time, so that what was copied may be of two moments. */
function isCopied(from: string, to: string): boolean {
  for (let tries = 0; tries < TRIES; tries++) {
    const before = momentOf(from);
    for (const part of ["", "-wal"]) {
      rmSync(to + part, { force: true });
      if (existsSync(from + part)) copyFileSync(from + part, to + part);
    }
    const log = readLog(to, PAGE_BYTES);
    if (before === momentOf(from) && (log === null || commitsLost(log) === 0)) return true;
  }
  return false;
}

/** When a library's own file was written last; its log only grows in between. */
function momentOf(file: string): string {
  const { mtimeNs, size, ino } = statSync(file, { bigint: true });
  return `${ino} ${size} ${mtimeNs}`;
}
