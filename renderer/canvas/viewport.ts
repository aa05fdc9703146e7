import type { Millimetres } from "../../core/base/units.ts";
import type { Spot } from "../../core/drawing/mark.ts";
import type { Bounds } from "../../core/drawing/measure.ts";
import { onPaper, type PaperSpot } from "../../core/drawing/paint.ts";
import { millimetresOf } from "../../core/drawing/scale.ts";

/** Which part of a sheet is seen: pixels = millimetres * scale + offset. */
export interface Viewport {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

/** A width and a height, both in the same unit. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** A place in the window of the drawing, in pixels from its top left. */
export interface Pixel {
  readonly x: number;
  readonly y: number;
}

/** An upright box of the sheet, in millimetres of paper. */
export interface PaperBox {
  readonly left: Millimetres;
  readonly top: Millimetres;
  readonly right: Millimetres;
  readonly bottom: Millimetres;
}

/** Pixels at the edges of the window that a fitted drawing leaves free: at the top for what floats there. */
export interface Margins {
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly left: number;
}

/** Pixels for each millimetre at 100 %: the screen's 96 to the inch. */
export const FULL_SIZE = 96 / 25.4;
const LEAST = FULL_SIZE * 0.1;
const MOST = FULL_SIZE * 8;
/** A small drawing is not blown up beyond this to fill a wide window. */
const MOST_FITTED = FULL_SIZE * 1.5;
/** At least this much of the drawing stays in the window, however far it is moved. */
const LEAST_IN_SIGHT = 64;

/** Room at the edges where nothing floats over the drawing. */
export const NO_MARGINS: Margins = { top: 16, right: 16, bottom: 16, left: 16 };

/** A box of the sheet in the middle of the window, inside the margins. */
export function fitted(box: PaperBox, window: Size, margins: Margins = NO_MARGINS): Viewport {
  const width = Math.max(1, window.width - margins.left - margins.right);
  const height = Math.max(1, window.height - margins.top - margins.bottom);
  const most = Math.min(MOST_FITTED, width / (box.right - box.left), height / (box.bottom - box.top));
  const scale = clamp(most, LEAST, MOST);
  return {
    scale,
    x: margins.left + width / 2 - ((box.left + box.right) / 2) * scale,
    y: margins.top + height / 2 - ((box.top + box.bottom) / 2) * scale,
  };
}

/** Zoomed by a factor, the place under the pointer kept where it is. */
export function zoomed(view: Viewport, factor: number, at: Pixel): Viewport {
  const scale = clamp(view.scale * factor, LEAST, MOST);
  const by = scale / view.scale;
  return { scale, x: at.x - (at.x - view.x) * by, y: at.y - (at.y - view.y) * by };
}

/** Moved by pixels. */
export function panned(view: Viewport, dx: number, dy: number): Viewport {
  return { ...view, x: view.x + dx, y: view.y + dy };
}

/** Zoomed to 100 % about a pixel, the middle of the window where none is given. */
export function fullSize(view: Viewport, window: Size, at: Pixel = middleOf(window)): Viewport {
  return zoomed(view, FULL_SIZE / view.scale, at);
}

/** Moved, at the same zoom, so that a place on the sheet lies inside the window with room round it. */
export function showing(view: Viewport, spot: PaperSpot, window: Size): Viewport {
  const { x, y } = inWindow(view, spot);
  const room = Math.min(120, window.width / 4, window.height / 4);
  const shift = (at: number, most: number): number => (at < room ? room - at : at > most - room ? most - room - at : 0);
  return panned(view, shift(x, window.width), shift(y, window.height));
}

/** Moved, where need be, so that some of the box stays in the window. */
export function keptInSight(view: Viewport, box: PaperBox, window: Size): Viewport {
  const shift = (offset: number, from: Millimetres, to: Millimetres, most: number): number => {
    const room = Math.min(LEAST_IN_SIGHT, most / 2);
    return clamp(offset, room - to * view.scale, most - room - from * view.scale);
  };
  const x = shift(view.x, box.left, box.right, window.width);
  const y = shift(view.y, box.top, box.bottom, window.height);
  return x === view.x && y === view.y ? view : { ...view, x, y };
}

/** How far a view is zoomed: 1 at 100 %. */
export function zoomOf(view: Viewport): number {
  return view.scale / FULL_SIZE;
}

/** The place on the sheet under a pixel of the window. */
export function onSheet(view: Viewport, pixel: Pixel): PaperSpot {
  return { x: (pixel.x - view.x) / view.scale, y: (pixel.y - view.y) / view.scale };
}

/** The pixel of the window at a place on the sheet. */
export function inWindow(view: Viewport, spot: PaperSpot): Pixel {
  return { x: spot.x * view.scale + view.x, y: spot.y * view.scale + view.y };
}

/** The pixel of the window at a spot of the drawing. */
export function pixelOf(view: Viewport, spot: Spot): Pixel {
  return inWindow(view, onPaper(spot));
}

/** A box of the drawing in millimetres of paper, grown on all sides. */
export function paperBox({ left, top, right, bottom }: Bounds, by: Millimetres = 0): PaperBox {
  return {
    left: millimetresOf(left) - by,
    top: millimetresOf(top) - by,
    right: millimetresOf(right) + by,
    bottom: millimetresOf(bottom) + by,
  };
}

/** What of the sheet the window shows. */
export function seenBox(view: Viewport, window: Size): PaperBox {
  const { x: left, y: top } = onSheet(view, { x: 0, y: 0 });
  const { x: right, y: bottom } = onSheet(view, { x: window.width, y: window.height });
  return { left, top, right, bottom };
}

/** The middle of the window. */
export function middleOf(window: Size): Pixel {
  return { x: window.width / 2, y: window.height / 2 };
}

function clamp(value: number, least: number, most: number): number {
  return Math.min(most, Math.max(least, value));
}
