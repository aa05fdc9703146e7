import { join } from "node:path";
import { remember } from "../../../core/base/memo.ts";
import { type Outcome, ok, type Refusal, refuse } from "../../../core/base/outcome.ts";
import { storeRefusal } from "../failure.ts";
import { keptOpen } from "../keptOpen.ts";
import type { Library, LibraryKeeper } from "../library.ts";
import { identityOf, writeAnew } from "./away.ts";
import { stampOf } from "./backup.ts";
import { emptyBin } from "./circuits.ts";
import { sqliteLibrary } from "./library.ts";
import { closeStore, copyOfFirstDay, copyOfTheDay, openStore, STORE_FILE, type Store } from "./open.ts";
import { sweepPictures } from "./pictures.ts";

/** The keeper of a library in a folder. */
export interface StoreKeeper extends LibraryKeeper {
  /** The open library as SQLite has it. */
  store(): Promise<Outcome<Store>>;
}

const libraryIn: (store: Store) => Library = remember(sqliteLibrary);

/** A keeper of the library in this folder. On opening it empties the bin of old things, lets go of pictures that none names, and makes the copy of the day. */
export function keepStore(folder: string, now: () => Date, person = ""): StoreKeeper {
  let chores: Promise<void> = Promise.resolve();
  let notices: readonly Refusal[] = [];
  let identity: string | null = null;
  let day = "";
  let anew: Promise<Outcome<Store>> | null = null;
  const file = join(folder, STORE_FILE);

  const open = async (): Promise<Outcome<Store>> => {
    const found = await openStore(folder, now());
    if (!found.ok) return found;
    const opened = { ...found.value, person };
    notices = [...notices, ...opened.notices];
    identity = identityOf(file);
    day = dayOf(now());
    chores = chore(opened);
    return ok(opened);
  };
  /** The copy comes first: what leaves the bin for good is in it. */
  const chore = async (store: Store): Promise<void> => {
    const notice = (await copyOfTheDay(store, now())) ?? emptied(store);
    if (notice) notices = [...notices, notice];
  };
  /** Left open over midnight, a library begins the next day as at a start. */
  const choreOfTheDay = (store: Store): void => {
    if (day === dayOf(now())) return;
    day = dayOf(now());
    chores = chores.then(() => chore(store));
  };
  /** The library again after its file was taken away; where it cannot be written anew, why, and it stays open. */
  const openAnew = async (store: Store): Promise<Outcome<Store>> => {
    try {
      await chores;
      await writeAnew(store.connection, file);
    } catch (error) {
      const refusal = storeRefusal(error, folder);
      if (!refusal) throw error;
      return { ok: false, refusal };
    }
    closeStore(store);
    notices = [...notices, refuse("store-put-back", { folder }).refusal];
    return open();
  };
  const emptied = (store: Store): Refusal | null => {
    try {
      emptyBin(store, now());
      sweepPictures(store, now());
      return null;
    } catch (error) {
      const refusal = storeRefusal(error, folder);
      if (!refusal) throw error;
      return refusal;
    }
  };
  const kept = keptOpen(open);
  const store = async (): Promise<Outcome<Store>> => {
    const opened = await kept.get();
    if (!opened.ok) return opened;
    if (identityOf(file) === identity) {
      choreOfTheDay(opened.value);
      return opened;
    }
    anew ??= openAnew(opened.value).finally(() => {
      anew = null;
    });
    const again = await anew;
    if (again.ok) kept.put(again.value);
    return again;
  };
  return {
    folder,
    place: { where: "here", name: "" },
    store,
    library: async () => {
      const opened = await store();
      return opened.ok ? ok(libraryIn(opened.value)) : opened;
    },
    takeNotices: () => {
      const taken = notices;
      notices = [];
      return taken;
    },
    close: async () => {
      const opened = await kept.end();
      await chores;
      if (!opened) return;
      await copyOfFirstDay(opened, now());
      closeStore(opened);
    },
  };
}

/** The day of a moment, as copies are named. */
function dayOf(moment: Date): string {
  return stampOf(moment).slice(0, 10);
}
