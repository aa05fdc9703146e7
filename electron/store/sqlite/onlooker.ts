import { type Outcome, ok, type Refusal, refuse } from "../../../core/base/outcome.ts";
import type { Library, LibraryKeeper } from "../library.ts";
import { type Snapshot, snapshotOf } from "./snapshot.ts";

/** A snapshot is shown so long before it is taken anew, milliseconds, and so many times as long as it took. */
const SHOWN_MS = 3_000;
const SHOWN_TIMES = 20;

/**
 * A keeper that shows a library which another process has open as it stands there, to read: what is brought to its bench is kept nowhere.
 * It asks for the library itself whenever something is to be kept, and has it from then on where the other let go of it: `own` is waited for then.
 */
export function lookOn(owner: LibraryKeeper, now: () => Date, own = async (): Promise<void> => {}): LibraryKeeper {
  let shown: { readonly snapshot: Snapshot; readonly until: number } | null = null;
  let taking: Promise<Outcome<Library>> | null = null;
  let isOwner = false;
  let notices: readonly Refusal[] = [];

  const asked = async (): Promise<Outcome<Library>> => {
    const library = await owner.library();
    if (library.ok && shown) {
      shown.snapshot.close();
      notices = [...notices, refuse("store-own-again").refusal];
      shown = null;
      await own();
    }
    isOwner = library.ok;
    return library;
  };
  const take = async (): Promise<Outcome<Library>> => {
    const taken = await snapshotOf(owner.folder, now());
    if (!taken.ok) return taken;
    if (shown) shown.snapshot.close();
    else notices = [...notices, refuse("store-looked-at").refusal];
    const { library, tookMs } = taken.value;
    shown = { snapshot: taken.value, until: performance.now() + Math.max(SHOWN_MS, SHOWN_TIMES * tookMs) };
    return ok(library);
  };
  return {
    folder: owner.folder,
    place: owner.place,
    library: async () => {
      if (shown && performance.now() < shown.until) return ok(shown.snapshot.library);
      if (!shown || isOwner) {
        const library = await asked();
        if (library.ok || library.refusal.code !== "store-locked") return library;
      }
      taking ??= take().finally(() => {
        taking = null;
      });
      return taking;
    },
    whyNotKept: async () => {
      if (!shown) return null;
      const library = await asked();
      if (library.ok) return null;
      return library.refusal.code === "store-locked" ? refuse("store-looked-at").refusal : library.refusal;
    },
    takeNotices: () => {
      const taken = [...owner.takeNotices(), ...notices];
      notices = [];
      return taken;
    },
    close: async () => {
      shown?.snapshot.close();
      shown = null;
      await owner.close();
    },
  };
}
