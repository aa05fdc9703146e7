import { controlsOf } from "../../../core/circuit/points.ts";
import { asDrawn } from "../../../core/lesson/asDrawn.ts";
import { loadsNow } from "../../../core/lesson/attempt.ts";
import type { Move } from "../../../core/lesson/move.ts";
import type { Spot } from "../../../core/lesson/offers.ts";
import { FULL_SIZE } from "../../canvas/viewport.ts";
import { levelOf } from "../../canvas/zoomLevel.ts";
import { build, say, typed } from "../build.ts";
import { boxOf, drawingOf, throwAt } from "../drawing.ts";
import { onChange, type Piece } from "../view.ts";
import type { Work, WorkStore } from "./work.ts";

const LEAST_FITTED = 0.48;
const MOST_FITTED = 1.5;

/**
 * The drawing as it is printed: controls as they are set, loads as they are seen to work, no state of any wire. A press on a blade
 * throws, on anything else shows what can be done there.
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
  const tabs = pageTabs(store);
  const paint = onChange((...[attempt, page, palette]: readonly [Work["attempt"], string, Work["palette"]]) => {
    const { circuit } = attempt.exercise;
    const [, , width, height] = boxOf(circuit, page, 1);
    const fitted =
      Math.min(place.clientWidth / width, place.clientHeight / height, MOST_FITTED * FULL_SIZE) / FULL_SIZE;
    const zoom = Math.max(fitted, LEAST_FITTED);
    const level = levelOf(zoom);
    const live = asDrawn(circuit, attempt.condition, loadsNow(attempt));
    const svg = drawingOf({ circuit, page, live, palette, full: null, zoom, level, box: boxOf(circuit, page, level) });
    place.replaceChildren(...(svg ? [svg] : []));
    const title = circuit.pages.find(({ id }) => id === page)?.title ?? "";
    place.setAttribute("aria-label", `Drawing of ${title}. All that can be done on it stands in lists beside it.`);
  });
  const show = (work: Work): void => {
    tabs?.show(work);
    paint(work.attempt, work.page, work.palette);
  };
  return { element: build("div", { class: "bench" }, tabs?.element ?? null, place), show };
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
