import { remember } from "../../../core/base/memo.ts";
import { type Outcome, ok, type Refusal, refuse } from "../../../core/base/outcome.ts";
import { storeRefusal } from "../failure.ts";
import type { Library, LibraryKeeper } from "../library.ts";
import { emptyBin } from "./circuits.ts";
import { sqliteLibrary } from "./library.ts";
import { closeStore, copyOfTheDay, openStore, type Store } from "./open.ts";
import { sweepPictures } from "./pictures.ts";

/** The keeper of a library in a folder. */
export interface StoreKeeper extends LibraryKeeper {
  /** The open library as SQLite has it. */
  store(): Promise<Outcome<Store>>;
}

const libraryIn: (store: Store) => Library = remember(sqliteLibrary);

/** A keeper of the library in this folder. On opening it empties the bin of old things, lets go of pictures that none names, and makes the copy of the day. */
export function keepStore(folder: string, now: () => Date): StoreKeeper {
  let isClosed = false;
  let opening: Promise<Outcome<Store>> | null = null;
  let chores: Promise<void> = Promise.resolve();
  let notices: readonly Refusal[] = [];

  const open = async (): Promise<Outcome<Store>> => {
    const opened = await openStore(folder, now());
    if (!opened.ok) return opened;
    notices = [...notices, ...opened.value.notices];
    chores = chore(opened.value);
    return opened;
  };
  /** The copy comes first: what leaves the bin for good is in it. */
  const chore = async (store: Store): Promise<void> => {
    const notice = (await copyOfTheDay(store, now())) ?? emptied(store);
    if (notice) notices = [...notices, notice];
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
  const store = async (): Promise<Outcome<Store>> => {
    if (isClosed) return refuse("store-closed");
    opening ??= open();
    const asked = opening;
    let isOpen = false;
    try {
      const opened = await asked;
      isOpen = opened.ok;
      return opened;
    } finally {
      if (!isOpen && opening === asked) opening = null;
    }
  };
  return {
    folder,
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
      isClosed = true;
      const opened = await opening;
      opening = null;
      await chores;
      if (opened?.ok) closeStore(opened.value);
    },
  };
}
