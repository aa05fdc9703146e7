import { createStore } from "zustand/vanilla";
import { TAKE_HOME_WORDS } from "../../../core/base/words/takeHome.ts";
import type { Move } from "../../../core/lesson/move.ts";
import { circuitCautions } from "../../../core/paper/cautions.ts";
import { readExercise } from "../../../schemas/exercise.ts";
import { vehicleKeeper } from "../../learner/keeper.ts";
import { build, say, typed } from "../build.ts";
import { keepClear } from "../keepClear.ts";
import type { Piece } from "../view.ts";
import { entry, lists, offers } from "./acts.ts";
import { keepRoute, routeKept } from "./kept.ts";
import { said } from "./said.ts";
import { sheet } from "./sheet.ts";
import { complaint, route } from "./told.ts";
import { handIn, verdict } from "./verdict.ts";
import { type Keeper, made, type Work, workOn } from "./work.ts";

/*
 * The whole program of an exercise that is taken home. Its file lies in the page as it came, sealed; the vehicle with its fault is
 * in a closure of the keeper, and nothing else of the page ever holds it.
 */
const text = document.getElementById("exercise")?.textContent ?? "";
open(document.body).catch(() => fail(TAKE_HOME_WORDS.notOpened));

async function open(body: HTMLElement): Promise<void> {
  const file = readExercise(text);
  if (!file.ok) return fail(said(file.refusal));
  const keeper: Keeper = vehicleKeeper();
  const tried = await keeper({ ask: "try", text });
  if (!tried.ok || !("id" in tried.value)) return fail(tried.ok ? TAKE_HOME_WORDS.notOpened : said(tried.refusal));
  const { id } = tried.value;
  const before = routeKept(id);
  const again = await keeper({ ask: "open", text, route: before });
  const route = again.ok ? before : [];
  const opened = again.ok ? again : await keeper({ ask: "open", text, route });
  if (!opened.ok) return fail(said(opened.refusal));
  const told = "told" in opened.value ? opened.value.told : null;
  const dark = window.matchMedia("(prefers-color-scheme: dark)").matches;
  layOut(workOn(file.value.exercise, id, told, route, dark ? "dark" : "light"), keeper, body);
}

function layOut(start: Work, keeper: Keeper, body: HTMLElement): void {
  const store = createStore<Work>(() => start);
  const make = (...moves: readonly Move[]): void => {
    void made(store, keeper, moves, () => new Date().toISOString());
  };
  const drawing = sheet(store, make);
  const side = [
    complaint(start),
    entry(store, make),
    offers(store, make),
    lists(make),
    route(),
    verdict(store, make),
    handIn(store, keeper),
  ];
  const top = head(start, () => store.setState(({ palette }) => ({ palette: palette === "dark" ? "light" : "dark" })));
  body.replaceChildren(
    top.element,
    build("main", {}, drawing.element, build("div", { class: "side" }, ...side.map(({ element }) => element))),
    foot(start),
  );
  const views = [top, drawing, ...side];
  const show = (work: Work): void => {
    for (const view of views) view.show(work);
  };
  store.subscribe((work, before) => {
    if (work.attempt !== before.attempt) keepRoute(work.id, work.attempt.route);
    show(work);
  });
  keepClear(drawing.element);
  show(start);
}

function head({ attempt }: Work, turn: () => void): Piece<Work> {
  const { title, circuit } = attempt.exercise;
  const dark = build("button", { type: "button", class: "button", click: turn }, "Dark");
  const names = build(
    "div",
    { class: "names" },
    build("h1", {}, typed(title)),
    build("p", { class: "small" }, typed(circuit.vehicle ?? circuit.title)),
  );
  const show = ({ palette }: Work): void => {
    document.documentElement.dataset.theme = palette;
    say(dark, "aria-pressed", palette === "dark");
  };
  return { element: build("header", {}, names, dark), show };
}

function foot({ attempt }: Work): HTMLElement {
  const cautions = circuitCautions(attempt.exercise.circuit).slice(0, -1);
  return build(
    "footer",
    {},
    build("h2", {}, "Before you work on the vehicle"),
    build("ul", { class: "cautions" }, ...cautions.map((caution) => build("li", {}, typed(caution)))),
    build("p", {}, build("b", {}, TAKE_HOME_WORDS.deference)),
    build("p", { class: "small" }, TAKE_HOME_WORDS.made),
  );
}

function fail(words: string): void {
  document.body.replaceChildren(build("main", {}, build("p", { role: "alert" }, words)));
}
