import type { Underlay } from "../../core/circuit/circuit.ts";
import { cutOf, FIRST_LOOK } from "../../core/circuit/underlays.ts";
import { boxAround, eachCorner, moved, type Quad } from "../../core/drawing/projection.ts";
import type { PaperBox } from "../canvas/viewport.ts";
import type { Treatment } from "./pixels.ts";

/** How a printed page is made ready: a picture of its own that lies upright on the page, whatever its corners. */
export interface Lay extends Treatment {
  readonly sha256: string;
  /** Corners of what is shown, in pixels of the picture. */
  readonly cut: Quad;
  /** The same in pixels of what is made. */
  readonly onto: Quad;
  readonly width: number;
  readonly height: number;
}

/** Most pixels of what is made: at 200 dots an inch an A3 sheet has 7.7 million. */
const MOST_PIXELS = 9_000_000;
/** Most of all printed pages of a page together: four bytes each, and a third more for views further away. */
const ALL_PIXELS = 36_000_000;
/** Most while it is still being moved about. */
const PREVIEW_PIXELS = 500_000;

/** Most pixels of one of so many printed pages that are shown together. */
export function mostPixels(count: number, isMoving: boolean): number {
  return Math.min(isMoving ? PREVIEW_PIXELS : MOST_PIXELS, ALL_PIXELS / Math.max(1, count));
}

/**
 * What is to be made of a printed page, and the box of the page in millimetres that it fills. As fine as the picture is where
 * it is finest, within so many pixels. Moved about, it is the same again.
 */
export function layOf(
  underlay: Underlay,
  isDark: boolean,
  mostPixels: number,
): { readonly lay: Lay; readonly box: PaperBox } {
  const { corners, image, contrast = FIRST_LOOK.contrast, whiteOut = false } = underlay;
  const cut = cutOf(underlay);
  const box = boxAround(corners);
  const [across, down] = [box.right - box.left, box.bottom - box.top];
  const finest = Math.max(...corners.map((_, index) => side(cut, index) / side(corners, index)));
  const scale = Math.min(finest, Math.sqrt(mostPixels / (across * down)));
  const [width, height] = [across, down].map((mm) => Math.max(1, Math.round(mm * scale))) as [number, number];
  const onto = eachCorner(moved(corners, -box.left, -box.top), ([x, y]) => [
    near((x * width) / across),
    near((y * height) / down),
  ]);
  return { lay: { sha256: image.sha256, cut, onto, width, height, contrast, whiteOut, isDark }, box };
}

/** Moved by whole steps of its grid, corners differ in the last places; what is made must not. */
function near(value: number): number {
  return Math.round(value * 100) / 100;
}

function side(quad: Quad, index: number): number {
  const [[x, y], [nextX, nextY]] = [quad[index]!, quad[(index + 1) % 4]!];
  return Math.hypot(nextX - x, nextY - y);
}

/** Whether a picture is only stretched and turned by quarters, which the canvas itself does faster and better. */
export function isStraight({ onto, cut }: Lay): boolean {
  return [onto, cut].every((quad) =>
    quad.every(([x, y], index) => {
      const [nextX, nextY] = quad[(index + 1) % 4]!;
      return Math.abs(nextX - x) < 0.02 || Math.abs(nextY - y) < 0.02;
    }),
  );
}
