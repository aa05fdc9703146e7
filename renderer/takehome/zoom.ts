import { FULL_SIZE } from "../canvas/viewport.ts";
import { build } from "./build.ts";
import type { SheetBox } from "./drawing.ts";

/** A drawing is not made smaller than this unasked: below, the words of its parts are left out. */
const LEAST_FITTED = 0.48;
const MOST_FITTED = 1.5;
const STEP = 1.25;
const ZOOM_LIMITS = { least: 0.15, most: 4 } as const;

/** How large a drawing stands in its room. */
export interface RoomZoom {
  /** As chosen by hand; else so that it fits, as long as its words can be read. */
  now(box: SheetBox): number;
  /** Larger or smaller by a step from now on, or with 0 so that all of it is seen. */
  step(step: -1 | 0 | 1, box: SheetBox): void;
}

/** The zoom of a drawing in this room. */
export function zoomIn(room: HTMLElement): RoomZoom {
  let chosen: number | null = null;
  const fit = ([, , width, height]: SheetBox): number =>
    Math.min(room.clientWidth / width, room.clientHeight / height, MOST_FITTED * FULL_SIZE) / FULL_SIZE;
  const now = (box: SheetBox): number => chosen ?? Math.max(fit(box), LEAST_FITTED);
  return {
    now,
    step: (step, box) => {
      const asked = step === 0 ? fit(box) : now(box) * STEP ** step;
      chosen = Math.min(Math.max(asked, ZOOM_LIMITS.least), ZOOM_LIMITS.most);
    },
  };
}

/** The buttons that make a drawing smaller, larger, or all of it seen. */
export function zoomButtons(zoom: (step: -1 | 0 | 1) => void): readonly HTMLElement[] {
  const button = (words: string, step: -1 | 0 | 1): HTMLElement =>
    build("button", { type: "button", class: "button", click: () => zoom(step) }, words);
  return [button("Smaller", -1), button("Larger", 1), button("Fit", 0)];
}
