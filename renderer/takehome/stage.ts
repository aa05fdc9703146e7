import { throwControl } from "../../core/edit/commands/throwControl.ts";
import { liveNow } from "../../core/edit/liveNow.ts";
import { darkMoment, isLit } from "../../core/lesson/flash.ts";
import { levelOf } from "../canvas/zoomLevel.ts";
import { build } from "./build.ts";
import { acted, type Desk, sceneShown } from "./desk.ts";
import { boxOf, drawingOf, throwAt } from "./drawing.ts";
import { drawnInFull } from "./full.ts";
import { type DeskStore, onChange, type View } from "./view.ts";
import { zoomIn } from "./zoom.ts";

/** The drawing as it stands on the page, and what is done to it. */
export interface Stage extends View {
  /** Makes it larger or smaller by a step, or 0 for all of it in its room. */
  zoom(step: -1 | 0 | 1): void;
  /** Shows what flashes as it is after so many seconds. */
  flash(seconds: number): void;
  /** Whether anything on the drawing flashes now. */
  flashes(): boolean;
}

/** The drawing of the shown page with its zoom: pressed on a blade it throws, on anything else it says what that is. */
export function stage(store: DeskStore): Stage {
  let lit: SVGSVGElement | null = null;
  let dark: SVGSVGElement | null = null;

  const press = ({ target }: Event): void => {
    if (!(target instanceof Element)) return;
    const desk = store.getState();
    const thrown = throwAt(desk.bench, desk.page, target);
    if (thrown) store.setState(acted(desk, (bench) => throwControl(bench, thrown.control, thrown.position)));
    else store.setState({ asked: target.closest("[data-of]")?.getAttribute("data-of") ?? null });
  };
  const sheet = build("div", { class: "sheet", role: "region", tabindex: "0", click: press });

  const zoom = zoomIn(sheet);

  const flash = (seconds: number): void => {
    if (dark === null) return;
    const isNow = isLit(seconds, store.getState().isStill);
    lit?.toggleAttribute("hidden", !isNow);
    dark.toggleAttribute("hidden", isNow);
  };

  const paint = (desk: Desk): void => {
    const { bench, page, palette } = desk;
    const { circuit, condition } = bench;
    const { shown, after } = liveNow(bench);
    const now = zoom.now(boxOf(circuit, page, 1));
    const level = levelOf(now);
    const common = {
      circuit,
      page,
      palette,
      full: drawnInFull(desk),
      zoom: now,
      level,
      box: boxOf(circuit, page, level),
    };
    const between = darkMoment(circuit, shown, { condition, states: after.good });
    lit = drawingOf({ ...common, live: shown });
    dark = between && drawingOf({ ...common, live: between });
    const [left, top] = [sheet.scrollLeft, sheet.scrollTop];
    sheet.replaceChildren(...[lit, dark].filter((svg) => svg !== null));
    sheet.scrollTo(left, top);
    const title = circuit.pages.find(({ id }) => id === page)?.title ?? "";
    sheet.setAttribute("aria-label", `Drawing of ${title}. All of it stands in words below.`);
    flash(0);
  };
  const repaint = onChange((..._on: readonly unknown[]) => paint(store.getState()));
  const show = (desk: Desk): void => {
    const { bench, page, palette, showsChanged, isStill, before } = desk;
    repaint(bench, page, palette, showsChanged, isStill, showsChanged && before, sceneShown(desk));
  };

  const zoomBy = (step: -1 | 0 | 1): void => {
    const desk = store.getState();
    zoom.step(step, boxOf(desk.bench.circuit, desk.page, 1));
    paint(desk);
  };
  new ResizeObserver(() => paint(store.getState())).observe(sheet);
  return { element: sheet, show, zoom: zoomBy, flash, flashes: () => dark !== null };
}
