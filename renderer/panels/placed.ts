import type { Pixel, Size } from "../canvas/viewport.ts";

/** Room to the edges of the window, pixels. */
const EDGE = 8;

/** Where a card stands, client pixels: right below the place where it fits, else as far over as it must go. */
export function placed({ x, y }: Pixel, { width, height }: Size): Pixel {
  return {
    x: Math.max(EDGE, Math.min(x, window.innerWidth - width - EDGE)),
    y: Math.max(EDGE, Math.min(y, window.innerHeight - height - EDGE)),
  };
}
