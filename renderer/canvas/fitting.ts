import { fitted, type Margins, type PaperBox, type Size, type Viewport, zoomOf } from "./viewport.ts";
import { levelOf } from "./zoomLevel.ts";

/** How often a fitted view is measured anew for the words of its zoom. */
const ROUNDS = 3;

/**
 * The view that shows a whole drawing in the window, `content` its box with words set for a level of zoom. Words take more of
 * a small drawing, so it is measured as it will be drawn; where each of two levels leads to the other, both have room. `places` is
 * the box round the places of its parts: a large page is then never laid out for a zoom at which it does not fit.
 */
export function fittedFor(
  content: (level: number) => PaperBox,
  window: Size,
  margins: Margins,
  places: PaperBox | null = null,
): Viewport {
  let level = places ? levelOf(Math.min(1, zoomOf(fitted(places, window, margins)))) : 1;
  let box = content(level);
  let view = fitted(box, window, margins);
  for (let round = 0; round < ROUNDS; round++) {
    const next = levelOf(zoomOf(view));
    if (next === level) return view;
    box = round === ROUNDS - 1 ? around(box, content(next)) : content(next);
    level = next;
    view = fitted(box, window, margins);
  }
  return view;
}

function around(one: PaperBox, other: PaperBox): PaperBox {
  return {
    left: Math.min(one.left, other.left),
    top: Math.min(one.top, other.top),
    right: Math.max(one.right, other.right),
    bottom: Math.max(one.bottom, other.bottom),
  };
}
