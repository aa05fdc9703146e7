import { startDrafting } from "./arrange/drafting.ts";
import { channelName, lockName, ownClassId } from "./class/classId.ts";
import { linkToClass } from "./class/link.ts";
import { playingReaction } from "./class/playing.ts";
import { firstPaint } from "./firstPaint.ts";
import type { Host } from "./host/host.ts";
import { cupboardReaction } from "./instructor/cupboardReaction.ts";
import { handinsReaction } from "./instructor/handinsReaction.ts";
import { learnerReaction } from "./learner/errands.ts";
import { askVehicle } from "./learner/vehicle.ts";
import { heedMishaps, type Mishaps, mishapsOf, watched } from "./report/mishaps.ts";
import { arrangingReaction } from "./state/arranging.ts";
import { askingReaction } from "./state/asking.ts";
import { type Autosave, autosave } from "./state/autosave.ts";
import { begin } from "./state/begin.ts";
import { besidesReaction, heedBesides } from "./state/besides.ts";
import { errandsReaction } from "./state/errands.ts";
import { frontingReaction } from "./state/fronting.ts";
import { actionForKey, isOfTheField } from "./state/keys.ts";
import { LOOK_EVERY_MS, watchOthers } from "./state/others.ts";
import { pageActs } from "./state/pageActs.ts";
import { picturingReaction } from "./state/picturing.ts";
import { listen } from "./state/requests.ts";
import type { AppState } from "./state/state.ts";
import { type AppStore, createAppStore } from "./state/store.ts";
import { windowTitle } from "./words/windowTitle.ts";
import { workerAsker } from "./workers/asker.ts";
import { workerDrawer } from "./workers/drawer.ts";

/** A page that runs: its store, and what takes down faults of the program itself. */
export interface StartedPage {
  readonly store: AppStore;
  readonly mishaps: Mishaps;
}

/** Makes the store of the page and joins it to host, workers, keyboard and system; the one place that knows them all. */
export function startPage(host: Host): StartedPage {
  const dark = window.matchMedia("(prefers-color-scheme: dark)");
  const saving = autosave(host, later);
  const mishaps = mishapsOf(
    host,
    () => store,
    () => new Date(),
  );
  heedMishaps(window, mishaps);
  const asker = workerAsker(() =>
    watched(new Worker(new URL("./workers/diagnose.ts", import.meta.url), { type: "module" }), mishaps),
  );
  const drawer = workerDrawer(() =>
    watched(new Worker(new URL("./workers/pictures.ts", import.meta.url), { type: "module" }), mishaps),
  );
  const startDesk = (): Worker =>
    watched(new Worker(new URL("./instructor/deskThread.ts", import.meta.url), { type: "module" }), mishaps);
  const besides = new BroadcastChannel("settings");
  const classId = ownClassId(sessionStorage, () => crypto.randomUUID());
  const link = linkToClass(new BroadcastChannel(channelName(classId)), afterPainting);
  // Held as long as this page lives, so that the class window knows when it is gone.
  void navigator.locks.request(lockName(classId), () => new Promise(() => {}));
  const acts = pageActs(() => store, classId);
  const store = createAppStore(dark.matches ? "dark" : "light", [
    saving.reaction,
    errandsReaction(host, acts, saving),
    askingReaction(asker),
    picturingReaction(host, drawer),
    cupboardReaction(host, acts, startDesk),
    handinsReaction(host, acts, startDesk),
    arrangingReaction(() => startDrafting(mishaps)),
    besidesReaction(besides),
    learnerReaction(
      host,
      acts,
      saving,
      askVehicle(() =>
        watched(new Worker(new URL("./workers/vehicle.ts", import.meta.url), { type: "module" }), mishaps),
      ),
      () => new Date(),
    ),
    playingReaction(every),
    // Only the program's own window has a menu.
    ...(host.name === "electron" ? [frontingReaction(host)] : []),
    link.reaction,
    mishaps.reaction,
  ]);
  link.listen(store);
  heedBesides(besides, store);
  dark.addEventListener("change", ({ matches }) =>
    store.dispatch({ do: "system-theme", theme: matches ? "dark" : "light" }),
  );
  keepBeforeLeaving(host, saving);
  const watch = watchOthers(host);
  every(() => void (document.visibilityState === "hidden" || watch(store)), LOOK_EVERY_MS);
  document.addEventListener("keydown", (event) => {
    const action = actionForKey(event, store.getState());
    if (!action || isOfTheField(event, action)) return;
    event.preventDefault();
    store.dispatch(action);
  });
  showLook(store.getState());
  store.subscribe(showLook);
  void begin(host, store);
  void firstPaint().then(() => asker.begin());
  // A browser keeps few connections to one host.
  if (host.name === "electron") void listen(host, store, (ms) => new Promise((resolve) => setTimeout(resolve, ms)));
  return { store, mishaps };
}

/**
 * What waits is kept when the page goes out of sight, and what was done elsewhere is shown when it comes back; a browser asks
 * before it closes one that has something unkept.
 */
function keepBeforeLeaving({ name }: Host, saving: Autosave): void {
  document.addEventListener("visibilitychange", () => {
    void (document.visibilityState === "hidden" ? saving.flush() : saving.look());
  });
  // Windows can stand side by side, and none of them is ever hidden.
  window.addEventListener("focus", () => void saving.look());
  window.addEventListener("pagehide", () => saving.leave());
  if (name === "electron") return;
  window.addEventListener("beforeunload", (event) => {
    if (saving.isAllKept()) return;
    void saving.flush();
    event.preventDefault();
  });
}

/** Look, size and motion belong to the whole document, where the style sheets read them. */
function showLook({ theme, settings, open, learning }: AppState): void {
  const { dataset, style } = document.documentElement;
  dataset.theme = theme;
  dataset.motion = settings.motion;
  style.setProperty("--scale", String(settings.scale));
  const title = learning?.attempt.exercise.title ?? open?.desk.bench.circuit.title;
  document.title = title === undefined ? "Wirefathom" : windowTitle(title);
}

/** Once this window has painted what it shows; at once where it is hidden and paints nothing. */
function afterPainting(run: () => void): void {
  if (document.visibilityState === "hidden") setTimeout(run, 0);
  else requestAnimationFrame(() => setTimeout(run, 0));
}

function every(run: () => void, ms: number): () => void {
  const timer = setInterval(run, ms);
  return () => clearInterval(timer);
}

function later(run: () => void, ms: number): () => void {
  const timer = setTimeout(run, ms);
  return () => clearTimeout(timer);
}
