import type { PaperSpot } from "../../core/drawing/paint.ts";

/** Which part of a sheet is seen: pixels = millimetres * scale + offset. */
export interface Viewport {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Pixels for each millimetre at 100 %: the screen's 96 to the inch. */
export const FULL_SIZE = 96 / 25.4;
const LEAST = FULL_SIZE * 0.1;
const MOST = FULL_SIZE * 8;
const MARGIN = 16;

/** The whole sheet in the middle of the window. */
export function fitted(sheet: Size, window: Size): Viewport {
  const scale = clamp(Math.min((window.width - 2 * MARGIN) / sheet.width, (window.height - 2 * MARGIN) / sheet.height));
  return { scale, x: (window.width - sheet.width * scale) / 2, y: (window.height - sheet.height * scale) / 2 };
}

/** Zoomed by a factor, the place under the pointer kept where it is. */
export function zoomed(view: Viewport, factor: number, at: { readonly x: number; readonly y: number }): Viewport {
  const scale = clamp(view.scale * factor);
  const by = scale / view.scale;
  return { scale, x: at.x - (at.x - view.x) * by, y: at.y - (at.y - view.y) * by };
}

/** Moved by pixels. */
export function panned(view: Viewport, dx: number, dy: number): Viewport {
  return { ...view, x: view.x + dx, y: view.y + dy };
}

/** Zoomed to 100 % about the middle of the window. */
export function fullSize(view: Viewport, window: Size): Viewport {
  return zoomed(view, FULL_SIZE / view.scale, { x: window.width / 2, y: window.height / 2 });
}

/** Moved, at the same zoom, so that a place on the sheet lies inside the window with room round it. */
export function showing(view: Viewport, spot: PaperSpot, window: Size): Viewport {
  const x = spot.x * view.scale + view.x;
  const y = spot.y * view.scale + view.y;
  const room = Math.min(120, window.width / 4, window.height / 4);
  const shift = (at: number, most: number): number => (at < room ? room - at : at > most - room ? most - room - at : 0);
  return panned(view, shift(x, window.width), shift(y, window.height));
}

/** The place on the sheet under a pixel of the window. */
export function onSheet(view: Viewport, pixel: { readonly x: number; readonly y: number }): PaperSpot {
  return { x: (pixel.x - view.x) / view.scale, y: (pixel.y - view.y) / view.scale };
}

function clamp(scale: number): number {
  return Math.min(MOST, Math.max(LEAST, scale));
}
