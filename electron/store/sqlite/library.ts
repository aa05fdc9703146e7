import { join } from "node:path";
import { type Outcome, ok } from "../../../core/base/outcome.ts";
import { isDamage, storeRefusal } from "../failure.ts";
import type { CircuitShelf, Library } from "../library.ts";
import { addMoves, listAttempts, moveAttempt, openAttempt, restartAttempt, takeAttempt } from "./attempts.ts";
import { bringIn, bringNew, openCircuit, openUnnoted } from "./bring.ts";
import { besidesOf, placeAnywhere, placeOf } from "./circuits.ts";
import { jobAt, listJobs, moveJob } from "./jobs.ts";
import { listCircuits, recentCircuits } from "./list.ts";
import { circuitOf, duplicateCircuit, removeCircuit, renameCircuit, restoreCircuit } from "./manage.ts";
import { forgetMarks, keepMarks, listMarks } from "./marks.ts";
import { markSuspect } from "./mending/suspect.ts";
import { STORE_FILE, type Store } from "./open.ts";
import { keepPicture, keptPicture } from "./pictures.ts";
import { noteClosed, openAttemptId, openCircuitId } from "./recent.ts";
import { saveBench, saveCircuit } from "./save.ts";
import { keepNote, keepSettings, noteOf, settingsOf } from "./settings.ts";
import { circuitInVersion, lastVersion, versionsOf } from "./versions.ts";

/** Does one thing with the store as one transaction. */
type Whole = <T>(act: (store: Store) => Outcome<T>) => Promise<Outcome<T>>;

/** The library in an open store of SQLite. Each method is over when it returns, before its promise is looked at. */
export function sqliteLibrary(store: Store): Library {
  const whole: Whole = async (act) => wholly(store, act);
  return {
    circuits: circuitShelf(whole),
    versions: {
      list: (id) =>
        whole((at) => {
          const place = placeOf(at, id);
          if (!place.ok) return place;
          const { key } = place.value;
          return ok({ versions: versionsOf(at, key), besides: besidesOf(at, key) });
        }),
      read: (id, version) =>
        whole((at) => {
          const place = placeOf(at, id);
          return place.ok ? circuitInVersion(at, place.value.key, version) : place;
        }),
    },
    benches: { save: (id, save, now) => whole((at) => saveBench(at, id, save, now)) },
    jobs: {
      list: (asked) => whole((at) => ok(listJobs(at, asked))),
      read: (place) => whole((at) => jobAt(at, place)),
      remove: (place, now) => whole((at) => moveJob(at, place, now)),
      restore: (place) => whole((at) => moveJob(at, place, null)),
    },
    attempts: {
      list: (where) => whole((at) => ok(listAttempts(at, where))),
      take: (taken, now) => whole((at) => takeAttempt(at, taken, now)),
      open: (id) => whole((at) => openAttempt(at, id)),
      add: (added, now) => whole((at) => addMoves(at, added, now)),
      restart: (id, now) => whole((at) => restartAttempt(at, id, now)),
      remove: (id, now) => whole((at) => moveAttempt(at, id, now)),
      restore: (id) => whole((at) => moveAttempt(at, id, null)),
    },
    marks: {
      list: () => whole((at) => ok(listMarks(at))),
      keep: (marks, now) =>
        whole((at) => {
          keepMarks(at, marks, now);
          return ok(listMarks(at));
        }),
      forget: (learner) =>
        whole((at) => {
          forgetMarks(at, learner);
          return ok(listMarks(at));
        }),
    },
    pictures: {
      keep: (file, now) =>
        whole((at) => {
          keepPicture(at, file, now);
          return ok(file.picture);
        }),
      read: (sha256) => whole((at) => keptPicture(at, sha256)),
    },
    recent: {
      list: (limit) => whole((at) => ok(recentCircuits(at, limit))),
      onBench: () => whole((at) => ok({ circuit: openCircuitId(at), attempt: openAttemptId(at) })),
      clear: () =>
        whole((at) => {
          noteClosed(at);
          return ok({});
        }),
    },
    settings: {
      read: () => whole((at) => ok(settingsOf(at))),
      keep: (changes) =>
        whole((at) => {
          keepSettings(at, changes);
          return ok(settingsOf(at));
        }),
      note: (name) => whole((at) => ok(noteOf(at, name))),
      keepNote: (name, value) =>
        whole((at) => {
          keepNote(at, name, value);
          return ok({});
        }),
    },
  };
}

function circuitShelf(whole: Whole): CircuitShelf {
  return {
    list: (asked) => whole((at) => ok(listCircuits(at, asked))),
    open: async (id, now) => {
      const opened = await whole((at) => openCircuit(at, id, now));
      const isFull = !opened.ok && opened.refusal.code === "store-full";
      return isFull ? whole((at) => openUnnoted(at, id)) : opened;
    },
    read: (id) =>
      whole((at) => {
        const found = circuitOf(at, id);
        return found.ok ? ok({ circuit: found.value.circuit, version: found.value.version }) : found;
      }),
    create: (circuit, coming, now) => whole((at) => bringNew(at, circuit, coming, now)),
    bringIn: (file, now) => whole((at) => bringIn(at, file, now)),
    save: (id, save, now) => whole((at) => saveCircuit(at, id, save, now)),
    standing: (id) =>
      whole((at) => {
        const place = placeAnywhere(at, id);
        if (!place.ok) return place;
        const { key, version, isRemoved } = place.value;
        const { saved } = lastVersion(at, key, version);
        return ok({ version, by: "", saved, isRemoved });
      }),
    duplicate: (id, now) => whole((at) => duplicateCircuit(at, id, now)),
    rename: (id, title, now) => whole((at) => renameCircuit(at, id, title, now)),
    remove: (id, isForGood, now) => whole((at) => removeCircuit(at, id, isForGood, now)),
    restore: (id) => whole((at) => restoreCircuit(at, id)),
  };
}

/** Takes a transaction back whose outcome is a refusal. */
class TakenBack extends Error {
  readonly outcome: Outcome<never>;
  constructor(outcome: Outcome<never>) {
    super("taken back");
    this.outcome = outcome;
  }
}

/** One transaction, or nothing of it where it refuses. What the disk says becomes a refusal; anything else is thrown. */
function wholly<T>(store: Store, act: (store: Store) => Outcome<T>): Outcome<T> {
  const run = (): Outcome<T> => {
    const outcome = act(store);
    if (!outcome.ok) throw new TakenBack(outcome);
    return outcome;
  };
  try {
    return store.connection.transaction(run)();
  } catch (error) {
    if (error instanceof TakenBack) return error.outcome;
    const refusal = storeRefusal(error, store.folder);
    if (!refusal) throw error;
    if (isDamage(error)) markSuspect(join(store.folder, STORE_FILE));
    return { ok: false, refusal };
  }
}
