import type { Refusal } from "../../core/base/outcome.ts";
import type { Host } from "../host/host.ts";
import { followed, keptAsCopy, keptBeside, notedOn, notKept, trialEnded } from "../words/saving.ts";
import { copied } from "./copied.ts";
import {
  asCopy,
  isChangedElsewhere,
  isParted,
  isSightAlone,
  isWorthKeeping,
  jobLeft,
  type Keeping,
  keepingOf,
  saved,
} from "./keeping.ts";
import { standing } from "./openBench.ts";
import type { AppStore, Reaction } from "./store.ts";

/** Milliseconds that an edit waits for the next one before both are kept. */
export const SAVE_AFTER_MS = 300;
/** Milliseconds after which a save that failed is tried again. */
export const TRY_AGAIN_MS = 3000;

/** What keeps the bench: a reaction to every action, and a way to keep at once what still waits. */
export interface Autosave {
  readonly reaction: Reaction;
  /** Resolves when all that waited is kept, or could not be. */
  flush(): Promise<void>;
  /** Sends what waits at once, without waiting for the save before it: a page that goes does not hear how that ended. */
  leave(): void;
  /** Asks whether what is on the bench was changed in another window; if so, and nothing waits here, it is shown. */
  look(): Promise<void>;
  /** False while something waits to be kept, or could not be. */
  isAllKept(): boolean;
}

/**
 * Keeps every accepted edit in the store of the host, a moment after it; what was in sight goes with it. A bench that is
 * put away is kept to its last edit, however long that takes; a sample that was only tried is taken out again, and where
 * something was noted on it, offered.
 */
export function autosave(host: Host, later: (run: () => void, ms: number) => () => void): Autosave {
  let current: Keeping | null = null;
  let away: readonly Keeping[] = [];
  let stop: (() => void) | null = null;
  let waitsMs = 0;
  let lastRun = Promise.resolve();
  let theStore: AppStore | null = null;

  const wait = (ms: number): void => {
    stop?.();
    waitsMs = ms;
    stop = later(() => void flush(), ms);
  };
  /** One run after the other: each save rests on the version that the one before it made. */
  const flush = (): Promise<void> => {
    stop?.();
    stop = null;
    const run = (): Promise<void> => (theStore ? keepAll(theStore) : Promise.resolve());
    lastRun = lastRun.then(run, run);
    return lastRun;
  };
  const keepAll = async (store: AppStore): Promise<void> => {
    for (const keeping of away) {
      if (keeping.open.isTrial) await takeOut(keeping, store);
      else if (isWorthKeeping(keeping)) await keep(keeping, store);
      if (!keeping.isFailing) away = away.filter((each) => each !== keeping);
    }
    if (current && isWorthKeeping(current)) await keep(current, store);
    if (isFailing()) store.dispatch({ do: "saving", saved: "failed" });
    else store.dispatch({ do: "saving", saved: isAllKept() ? "saved" : "waiting" });
  };
  const keep = async (keeping: Keeping, store: AppStore): Promise<void> => {
    const { open, id, jobs } = keeping;
    keeping.sent = open;
    const outcome = await saved(host, keeping);
    if (!outcome.ok) return failed(keeping, outcome.refusal, store);
    keeping.jobs = keeping.jobs.filter((job) => !jobs.includes(job));
    const stands = standing(outcome);
    Object.assign(keeping, { ...stands, kept: open, keptCircuit: open.desk.bench.circuit, isFailing: false });
    if (outcome.beside) store.dispatch({ do: "tell", notice: keptBeside(open, id ?? "", outcome.beside) });
    if (keeping === current) store.dispatch({ do: "stored", ...stands });
    else if (id === null) await tellOpen();
  };
  /** The host takes what is new in the library for what is open. */
  const tellOpen = (): Promise<void> => {
    const id = current?.id ?? null;
    return quietly(id === null ? host.ask("circuits.close", {}) : host.ask("circuits.open", { id }));
  };
  const failed = async (keeping: Keeping, refusal: Refusal | null, store: AppStore): Promise<void> => {
    const isAway = away.includes(keeping);
    if (isParted(refusal) && isSightAlone(keeping) && (isAway || isChangedElsewhere(refusal))) {
      keeping.kept = keeping.open;
      if (keeping === current) follow(keeping, store);
      return;
    }
    if (isAway && isParted(refusal)) {
      const copy = asCopy({ ...keeping, open: copied(keeping.open) });
      away = away.map((each) => (each === keeping ? copy : each));
      await keep(copy, store);
      if (copy.isFailing) return;
      away = away.filter((each) => each !== copy);
      store.dispatch({ do: "tell", notice: keptAsCopy(copy.open) });
      return;
    }
    // It is kept as a copy by now.
    if (!isAway && keeping !== current) return;
    const isNews = !keeping.isFailing;
    keeping.isFailing = true;
    if (isNews) store.dispatch({ do: "tell", notice: notKept(keeping.open, refusal, isParted(refusal)) });
    if (!isParted(refusal)) wait(TRY_AGAIN_MS);
  };
  /** Nothing was done here, so what was done in the other window is shown. */
  const follow = ({ open, id }: Keeping, store: AppStore): void => {
    if (id === null) return;
    store.dispatch({ do: "tell", notice: followed(open) });
    store.dispatch({ do: "open-circuit", id });
  };
  /** What is in sight is brought to the host once more, which refuses it where the bench is no longer the same. */
  const look = (): Promise<void> => {
    const run = async (): Promise<void> => {
      const seen = current;
      if (!theStore || !seen || seen.id === null || seen.isFailing || isWorthKeeping(seen)) return;
      const outcome = await saved(host, seen);
      if (outcome.ok || !isChangedElsewhere(outcome.refusal)) return;
      if (seen === current && isSightAlone(seen)) follow(seen, theStore);
    };
    lastRun = lastRun.then(run, run);
    return lastRun;
  };
  /** What was noted on a sample is a circuit of its own that can be brought back. */
  const takeOut = async (keeping: Keeping, store: AppStore): Promise<void> => {
    const words = notedOn(keeping.open);
    if (words !== "") {
      keeping.open = { ...keeping.open, isTrial: false };
      await keep(keeping, store);
      if (keeping.isFailing) return;
    }
    const { id } = keeping;
    if (id === null) return;
    await quietly(host.ask("circuits.remove", { id, isForGood: words === "" }));
    if (words !== "") store.dispatch({ do: "tell", notice: trialEnded(keeping.open, words, id) });
  };
  /** The host knows this page's saves by their mark: it goes on from the one before, wherever that was kept. */
  const leave = (): void => {
    for (const keeping of [...away.filter(({ open }) => !open.isTrial), ...(current ? [current] : [])])
      if (keeping.sent !== keeping.open && isWorthKeeping(keeping)) void saved(host, keeping);
  };
  const isFailing = (): boolean => [...away, ...(current ? [current] : [])].some((keeping) => keeping.isFailing);
  const isAllKept = (): boolean => away.length === 0 && !(current && isWorthKeeping(current));

  return {
    flush,
    leave,
    look,
    isAllKept,
    reaction: (action, _state, before, store) => {
      theStore = store;
      const { open } = store.getState();
      if (current && current.open.number !== open?.number) {
        away = [...away, current];
        current = null;
        void flush();
      }
      if (!open) return;
      current ??= keepingOf(open);
      current.open = open;
      // Undone, a job that was begun was none.
      const left = action.do === "undo" ? null : jobLeft(before.open, open);
      if (left) current.jobs = [...current.jobs.filter(({ id }) => id !== left.id), left];
      if (action.do === "keep-as-copy") {
        current = asCopy(current);
        wait(0);
      } else if (!current.isFailing && isWorthKeeping(current)) {
        if (!stop || waitsMs > SAVE_AFTER_MS) wait(SAVE_AFTER_MS);
        if (open.saved === "saved") store.dispatch({ do: "saving", saved: "waiting" });
      }
    },
  };
}

/** Waits for something that nobody misses where it fails. */
async function quietly(asked: Promise<unknown>): Promise<void> {
  await asked.catch(() => null);
}
