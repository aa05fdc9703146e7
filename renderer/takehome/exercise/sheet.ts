import { controlsOf } from "../../../core/circuit/points.ts";
import { asDrawn } from "../../../core/lesson/asDrawn.ts";
import { loadsNow } from "../../../core/lesson/attempt.ts";
import type { Move } from "../../../core/lesson/move.ts";
import type { Spot } from "../../../core/lesson/offers.ts";
import { levelOf } from "../../canvas/zoomLevel.ts";
import { build, say, typed } from "../build.ts";
import { boxOf, drawingOf, throwAt } from "../drawing.ts";
import { onChange, type Piece } from "../view.ts";
import { zoomButtons, zoomIn } from "../zoom.ts";
import { markChosen } from "./chosen.ts";
import type { Work, WorkStore } from "./work.ts";

/**
 * The drawing as it is printed: controls as they are set, loads as they are seen to work, no state of any wire. A press on a blade
 * throws, on anything else shows what can be done there, and what is chosen has a line round it.
 */
export function sheet(store: WorkStore, make: (...moves: readonly Move[]) => void): Piece<Work> {
  const press = ({ target }: Event): void => {
    if (!(target instanceof Element)) return;
    const { attempt, page } = store.getState();
    const { circuit } = attempt.exercise;
    const thrown = throwAt({ circuit, condition: attempt.condition }, page, target);
    if (thrown) make({ do: "throw", ...thrown });
    else
      store.setState({ spot: spotOf(store.getState(), target.closest("[data-of]")?.getAttribute("data-of") ?? null) });
  };
  const place = build("div", { class: "sheet", role: "region", tabindex: "0", click: press });
  const zoom = zoomIn(place);
  const paint = ({ attempt, page, palette, spot }: Work): void => {
    const { circuit } = attempt.exercise;
    const now = zoom.now(boxOf(circuit, page, 1));
    const level = levelOf(now);
    const live = asDrawn(circuit, attempt.condition, loadsNow(attempt));
    const box = boxOf(circuit, page, level);
    const svg = drawingOf({ circuit, page, live, palette, full: null, zoom: now, level, box });
    if (svg) markChosen(svg, spot?.id ?? null);
    const [left, top] = [place.scrollLeft, place.scrollTop];
    place.replaceChildren(...(svg ? [svg] : []));
    place.scrollTo(left, top);
    const title = circuit.pages.find(({ id }) => id === page)?.title ?? "";
    place.setAttribute("aria-label", `Drawing of ${title}. All that can be done on it stands in lists beside it.`);
  };
  const repaint = onChange((..._on: readonly unknown[]) => paint(store.getState()));
  const rechoose = onChange((spot: Work["spot"]) => {
    const svg = place.querySelector("svg");
    if (svg) markChosen(svg, spot?.id ?? null);
  });
  const tabs = pageTabs(store);
  const sizes = zoomButtons((step) => {
    const { attempt, page } = store.getState();
    zoom.step(step, boxOf(attempt.exercise.circuit, page, 1));
    paint(store.getState());
  });
  const show = (work: Work): void => {
    tabs?.show(work);
    repaint(work.attempt, work.page, work.palette);
    rechoose(work.spot);
  };
  new ResizeObserver(() => paint(store.getState())).observe(place);
  const looks = build("div", { class: "looks", role: "group", "aria-label": "Size of the drawing" }, ...sizes);
  return { element: build("div", { class: "bench" }, tabs?.element ?? null, place, looks), show };
}

/** What an id of the drawing is; null where it is neither a part nor a wire. */
function spotOf({ attempt }: Work, id: string | null): Spot | null {
  if (id === null) return null;
  const { parts, wires } = attempt.exercise.circuit;
  if (parts.some((part) => part.id === id)) return { is: "part", id };
  return wires.some((wire) => wire.id === id) ? { is: "wire", id } : null;
}

function pageTabs(store: WorkStore): Piece<Work> | null {
  const { pages } = store.getState().attempt.exercise.circuit;
  if (pages.length < 2) return null;
  const buttons = pages.map(({ id, title }) =>
    build("button", { type: "button", class: "button", click: () => store.setState({ page: id }) }, typed(title)),
  );
  const show = ({ page }: Work): void => {
    for (const [at, button] of buttons.entries()) say(button, "aria-pressed", pages[at]!.id === page);
  };
  return { element: build("div", { class: "looks", role: "group", "aria-label": "Pages" }, ...buttons), show };
}

/** Every throw that can be made, for whoever does not press blades. */
export function throwsOf({ attempt }: Work): readonly Move[] {
  const { circuit } = attempt.exercise;
  return controlsOf(circuit).flatMap(({ key, control }) =>
    control.positions.map(({ name }): Move => ({ do: "throw", control: key, position: name })),
  );
}
