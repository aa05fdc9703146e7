import { type Outcome, ok } from "../../../core/base/outcome.ts";
import type { AttemptShelf, CircuitShelf, Library, RecentShelf, SettingShelf } from "../library.ts";
import { sentBench, sentEdit } from "../sent.ts";
import { addMoves, listAttempts, moveAttempt, openAttempt, restartAttempt, takeAttempt } from "./attempts.ts";
import { bringIn, bringNew, openCircuit } from "./bring.ts";
import { besidesOf, placeAnywhere, placeOf } from "./circuits.ts";
import { jobAt, listJobs, moveJob } from "./jobs.ts";
import { listCircuits, recentCircuits } from "./list.ts";
import { circuitOf, duplicateCircuit, removeCircuit, renameCircuit, restoreCircuit } from "./manage.ts";
import { forgetMarks, keepMarks, listMarks } from "./marks.ts";
import { keepPicture, keptPicture } from "./pictures.ts";
import { noteClosed, onBench } from "./recent.ts";
import { keepSent } from "./save.ts";
import type { Whole } from "./session.ts";
import { keepNote, keepSettings, noteOf, settingsOf } from "./settings.ts";
import { circuitInVersion, lastVersion, versionsOf } from "./versions.ts";

/** The library on a PostgreSQL server, each method one transaction there. */
export function postgresLibrary(whole: Whole): Library {
  return {
    circuits: circuitShelf(whole),
    versions: {
      list: (id) =>
        whole("read", async (at) => {
          const place = await placeOf(at, id);
          if (!place.ok) return place;
          const { key } = place.value;
          return ok({ versions: await versionsOf(at, key), besides: await besidesOf(at, key) });
        }),
      read: (id, version) =>
        whole("read", async (at) => {
          const place = await placeOf(at, id);
          return place.ok ? circuitInVersion(at, place.value.key, version) : place;
        }),
    },
    benches: { save: (id, save, now) => whole("write", (at) => keepSent(at, id, sentBench(save), now)) },
    jobs: {
      list: (asked) => whole("read", async (at) => ok(await listJobs(at, asked))),
      read: (place) => whole("read", (at) => jobAt(at, place)),
      remove: (place, now) => whole("write", (at) => moveJob(at, place, now)),
      restore: (place) => whole("write", (at) => moveJob(at, place, null)),
    },
    attempts: attemptShelf(whole),
    marks: {
      list: () => whole("read", async (at) => ok(await listMarks(at))),
      keep: (marks, now) => whole("write", async (at) => after(keepMarks(at, marks, now), () => listMarks(at))),
      forget: (learner) => whole("write", async (at) => after(forgetMarks(at, learner), () => listMarks(at))),
    },
    pictures: {
      keep: (file, now) => whole("write", (at) => after(keepPicture(at, file, now), () => file.picture)),
      read: (sha256) => whole("read", (at) => keptPicture(at, sha256)),
    },
    recent: recentShelf(whole),
    settings: settingShelf(whole),
  };
}

function circuitShelf(whole: Whole): CircuitShelf {
  return {
    list: (asked) => whole("read", async (at) => ok(await listCircuits(at, asked))),
    open: (id, now) => whole("write", (at) => openCircuit(at, id, now)),
    read: (id) =>
      whole("read", async (at) => {
        const found = await circuitOf(at, id);
        return found.ok ? ok({ circuit: found.value.circuit, version: found.value.version }) : found;
      }),
    create: (circuit, coming, now) => whole("write", (at) => bringNew(at, circuit, coming, now)),
    bringIn: (file, now) => whole("write", (at) => bringIn(at, file, now)),
    save: (id, save, now) => whole("write", (at) => keepSent(at, id, sentEdit(save), now)),
    standing: (id) =>
      whole("read", async (at) => {
        const place = await placeAnywhere(at, id);
        if (!place.ok) return place;
        const { key, version, isRemoved } = place.value;
        const { by, saved } = await lastVersion(at, key, version);
        return ok({ version, by, saved, isRemoved });
      }),
    duplicate: (id, now) => whole("write", (at) => duplicateCircuit(at, id, now)),
    rename: (id, title, now) => whole("write", (at) => renameCircuit(at, id, title, now)),
    remove: (id, isForGood, now) => whole("write", (at) => removeCircuit(at, id, isForGood, now)),
    restore: (id) => whole("write", (at) => restoreCircuit(at, id)),
  };
}

function attemptShelf(whole: Whole): AttemptShelf {
  return {
    list: (where) => whole("read", async (at) => ok(await listAttempts(at, where))),
    take: (taken, now) => whole("write", (at) => takeAttempt(at, taken, now)),
    open: (id) => whole("write", (at) => openAttempt(at, id)),
    add: (added, now) => whole("write", (at) => addMoves(at, added, now)),
    restart: (id, now) => whole("write", (at) => restartAttempt(at, id, now)),
    remove: (id, now) => whole("write", (at) => moveAttempt(at, id, now)),
    restore: (id) => whole("write", (at) => moveAttempt(at, id, null)),
  };
}

function recentShelf(whole: Whole): RecentShelf {
  return {
    list: (limit) => whole("read", async (at) => ok(await recentCircuits(at, limit))),
    onBench: () => whole("read", async (at) => ok(await onBench(at))),
    clear: () => whole("write", (at) => after(noteClosed(at), () => ({}))),
  };
}

function settingShelf(whole: Whole): SettingShelf {
  return {
    read: () => whole("read", async (at) => ok(await settingsOf(at))),
    keep: (changes) => whole("write", (at) => after(keepSettings(at, changes), () => settingsOf(at))),
    note: (name) => whole("read", async (at) => ok(await noteOf(at, name))),
    keepNote: (name, value) => whole("write", (at) => after(keepNote(at, name, value), () => ({}))),
  };
}

/** What comes back once something was done. */
async function after<T>(done: Promise<void>, value: () => T | Promise<T>): Promise<Outcome<T>> {
  await done;
  return ok(await value());
}
