import { createStore } from "zustand/vanilla";
import { withoutTurns } from "../../core/base/turning.ts";
import { TAKE_HOME_WORDS } from "../../core/base/words/takeHome.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { liveNow } from "../../core/edit/liveNow.ts";
import { circuitCautions } from "../../core/paper/cautions.ts";
import { conditionPhrase } from "../words/condition.ts";
import { build, say, typed } from "./build.ts";
import { controls } from "./controls.ts";
import { type Desk, deskFor, later } from "./desk.ts";
import { keepClear } from "./keepClear.ts";
import { key } from "./key.ts";
import { printed } from "./printed.ts";
import { pulls } from "./pulls.ts";
import { scenes } from "./scenes.ts";
import { type Stage, stage } from "./stage.ts";
import { PANEL_ID, tabs } from "./tabs.ts";
import type { DeskStore, View } from "./view.ts";
import { aboutWords, inWords } from "./words.ts";
import { zoomButtons } from "./zoom.ts";

/** Longest step of time that counts: a page that was asleep goes on where it stood. */
const LONGEST_STEP = 0.5;

/** Lays the whole page out, and keeps it true to what the circuit does. */
export function openPage(circuit: Circuit, body: HTMLElement): void {
  const store: DeskStore = createStore<Desk>(() => deskFor(circuit, wishes()));
  const now = (): Desk => store.getState();
  const [top, pages, drawing] = [head(store), circuit.pages.length > 1 ? tabs(store) : null, stage(store)];
  const [choice, state] = [looks(store, drawing), standing()];
  const side = [scenes(store), controls(store), pulls(store), key(), inWords(now)].filter((view) => view !== null);
  const panel = build("div", { id: PANEL_ID }, drawing.element, choice.element, state.element);
  if (pages) panel.setAttribute("role", "tabpanel");
  if (pages) panel.setAttribute("aria-label", "Page");
  const bench = build("div", { class: "bench" }, pages?.element ?? null, panel);
  body.replaceChildren(
    top.element,
    build("main", {}, bench, build("div", { class: "side" }, ...side.map(({ element }) => element))),
    printed(now),
    foot(circuit),
  );
  const views: readonly View[] = [top, ...(pages ? [pages] : []), drawing, choice, state, ...side];
  const show = (desk: Desk): void => {
    for (const view of views) view.show(desk);
  };
  store.subscribe(show);
  keepClear(bench);
  show(now());
  keepTime(store, drawing.flash);
}

/** What the person's system asks for: a dark page, and nothing that moves. */
function wishes(): Pick<Desk, "palette" | "isStill"> {
  const asks = (what: string): boolean => window.matchMedia(what).matches;
  return {
    palette: asks("(prefers-color-scheme: dark)") ? "dark" : "light",
    isStill: asks("(prefers-reduced-motion: reduce)"),
  };
}

/** Lets time pass for scenes that are played and lamps that flash. */
function keepTime(store: DeskStore, flash: (seconds: number) => void): void {
  let last = 0;
  const tick = (ms: number): void => {
    const seconds = ms / 1_000;
    const desk = store.getState();
    const next = later(desk, Math.min(seconds - last, LONGEST_STEP));
    last = seconds;
    if (next !== desk) store.setState(next);
    flash(seconds);
    requestAnimationFrame(tick);
  };
  requestAnimationFrame(tick);
}

function head(store: DeskStore): View {
  const { title, vehicle = "" } = store.getState().bench.circuit;
  const turn = (): void => {
    store.setState(({ palette }) => ({ palette: palette === "dark" ? "light" : "dark" }));
  };
  const dark = build("button", { type: "button", class: "button", click: turn }, "Dark");
  const print = build("button", { type: "button", class: "button", click: () => window.print() }, "Print");
  const names = build(
    "div",
    { class: "names" },
    build("h1", {}, typed(title)),
    build("p", { class: "small" }, typed(vehicle)),
  );
  const show = ({ palette }: Desk): void => {
    document.documentElement.dataset.theme = palette;
    say(dark, "aria-pressed", palette === "dark");
  };
  return { element: build("header", {}, names, dark, print), show };
}

/** How the drawing is looked at. */
function looks(store: DeskStore, drawing: Stage): View {
  const toggle = (words: string, field: "showsChanged" | "isStill"): HTMLButtonElement =>
    build(
      "button",
      { type: "button", class: "button", click: () => store.setState((desk) => ({ [field]: !desk[field] })) },
      words,
    );
  const changed = toggle("Only what changed", "showsChanged");
  const still = toggle("Hold flashing still", "isStill");
  const show = (desk: Desk): void => {
    say(changed, "aria-pressed", desk.showsChanged);
    say(still, "aria-pressed", desk.isStill);
    still.hidden = !drawing.flashes();
  };
  return {
    element: build("div", { class: "looks" }, ...zoomButtons(drawing.zoom), changed, still),
    show,
  };
}

/** How the circuit stands, what the last act changed, and what was asked about, in words. */
function standing(): View {
  const condition = build("b");
  const said = build("p", { role: "status", "aria-live": "polite" });
  const asked = build("p", { class: "small", "aria-live": "polite" });
  const show = ({ bench, said: words, asked: id }: Desk): void => {
    const { circuit } = bench;
    condition.textContent = withoutTurns(conditionPhrase(circuit, bench.condition));
    const told = withoutTurns(words);
    if (said.textContent !== told) said.textContent = told;
    const about = id === null ? "" : withoutTurns(aboutWords(circuit, liveNow(bench).shown, id));
    if (asked.textContent !== about) asked.textContent = about;
  };
  return { element: build("div", { class: "standing" }, build("p", {}, condition), said, asked), show };
}

function foot(circuit: Circuit): HTMLElement {
  // The last of the frame is the short form of the sentence below it.
  const cautions = circuitCautions(circuit).slice(0, -1);
  return build(
    "footer",
    {},
    build("h2", {}, "Before you work on the vehicle"),
    build("ul", { class: "cautions" }, ...cautions.map((caution) => build("li", {}, typed(caution)))),
    build("p", {}, build("b", {}, TAKE_HOME_WORDS.deference)),
    build("p", { class: "small" }, TAKE_HOME_WORDS.solved),
    build("p", { class: "small" }, TAKE_HOME_WORDS.made),
  );
}
