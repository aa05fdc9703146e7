import type { Page, Underlay } from "../../core/circuit/circuit.ts";
import { cutOf, fitted } from "../../core/circuit/underlays.ts";
import {
  boxAround,
  type Corner,
  eachCorner,
  inverse,
  isUnfolded,
  mappedQuad,
  moved,
  projected,
  projectionOf,
  type Quad,
  rectangle,
  scaled,
} from "../../core/drawing/projection.ts";
import { cropUnderlay } from "../../core/edit/commands/cropUnderlay.ts";
import { placeUnderlay } from "../../core/edit/commands/placeUnderlay.ts";
import type { Command } from "../state/action.ts";
import type { Adjusting } from "../state/state.ts";

/** Least area of three corners while they are moved, square millimetres: a handle must not get lost in another. */
const LEAST_AREA = 25;

/** A printed page taken up, its handles where they belong. */
export function begun(underlay: Underlay, page: Page, how: Adjusting["how"]): Adjusting {
  const quad = how === "square" ? mappedQuad(wholeOnPage(underlay, page), cutOf(underlay)) : underlay.corners;
  return { underlay: underlay.id, how, quad };
}

/** How the whole picture lies on the page while the paper's corners are sought in it: pixels to millimetres. */
function wholeOnPage({ image }: Underlay, page: Page) {
  const { widthPx, heightPx } = image;
  return projectionOf(rectangle(0, 0, widthPx, heightPx), fitted(page, widthPx, heightPx));
}

/**
 * One handle moved to a spot of the page. Laid, a page keeps its shape and is stretched from the corner across, unless the
 * handle is moved alone; cropped, two sides move; made square, a corner stays in the picture. A fold is not taken.
 */
export function cornerMoved(
  now: Adjusting,
  underlay: Underlay,
  page: Page,
  at: number,
  spot: Corner,
  alone: boolean,
): Adjusting {
  const quad =
    now.how === "crop"
      ? cropMoved(now.quad, underlay, at, spot)
      : now.how === "lay" && !alone
        ? stretched(now.quad, at, spot)
        : withCorner(now.quad, at, now.how === "square" ? withinPicture(underlay, page, spot) : spot);
  return isUnfolded(quad, LEAST_AREA) ? { ...now, quad } : now;
}

/** All of it moved; what is sought in a picture or cropped stays on its picture. */
export function allMoved(now: Adjusting, dx: number, dy: number): Adjusting {
  return now.how === "lay" ? { ...now, quad: moved(now.quad, dx, dy) } : now;
}

/** All of it made so many times as large round its middle. */
export function allScaled(now: Adjusting, factor: number): Adjusting {
  const quad = scaled(now.quad, factor);
  return now.how === "lay" && isUnfolded(quad, LEAST_AREA) ? { ...now, quad } : now;
}

function withCorner(quad: Quad, at: number, spot: Corner): Quad {
  return quad.map((corner, index) => (index === at ? spot : corner)) as unknown as Quad;
}

function stretched(quad: Quad, at: number, [x, y]: Corner): Quad {
  const [fixedX, fixedY] = quad[(at + 2) % 4]!;
  const [ownX, ownY] = quad[at]!;
  const [dx, dy] = [ownX - fixedX, ownY - fixedY];
  const factor = Math.max(0.01, ((x - fixedX) * dx + (y - fixedY) * dy) / (dx * dx + dy * dy));
  return eachCorner(quad, ([cx, cy]) => [fixedX + (cx - fixedX) * factor, fixedY + (cy - fixedY) * factor]);
}

function withinPicture({ image }: Underlay, page: Page, [x, y]: Corner): Corner {
  const { left, top, right, bottom } = boxAround(fitted(page, image.widthPx, image.heightPx));
  return [Math.min(right, Math.max(left, x)), Math.min(bottom, Math.max(top, y))];
}

/** From the sheet as a unit square to the page. */
function fromUnit({ corners }: Underlay) {
  return projectionOf(rectangle(0, 0, 1, 1), corners);
}

function cropMoved(quad: Quad, underlay: Underlay, at: number, spot: Corner): Quad {
  const map = fromUnit(underlay);
  const unit = mappedQuad(inverse(map), quad);
  const share = (value: number): number => Math.min(1, Math.max(0, value));
  const [x, y] = projected(inverse(map), spot);
  const isLeft = at === 0 || at === 3;
  const isTop = at < 2;
  const [left, right] = isLeft ? [share(x), unit[1][0]] : [unit[0][0], share(x)];
  const [top, bottom] = isTop ? [share(y), unit[2][1]] : [unit[0][1], share(y)];
  return mappedQuad(map, rectangle(left, top, right - left, bottom - top));
}

/** A paper that a photograph is of; null for one whose size is not known, which fills the page. */
export type PaperSize = readonly [short: number, long: number] | null;

/** The edit that takes what was adjusted. A page made square lies in the middle of its page, lying or standing as in the photograph. */
export function takenBy(
  { quad, how, underlay: id }: Adjusting,
  underlay: Underlay,
  page: Page,
  paper: PaperSize,
): Command {
  if (how === "lay") return (bench) => placeUnderlay(bench, id, quad);
  if (how === "crop") {
    const [[left, top], , [right, bottom]] = mappedQuad(inverse(fromUnit(underlay)), quad);
    return (bench) => cropUnderlay(bench, id, { left, top, right, bottom });
  }
  const cut = eachCorner(mappedQuad(inverse(wholeOnPage(underlay, page)), quad), ([x, y]) => [
    Math.min(underlay.image.widthPx, Math.max(0, x)),
    Math.min(underlay.image.heightPx, Math.max(0, y)),
  ]);
  return (bench) => placeUnderlay(bench, id, squareOn(page, cut, paper), cut);
}

/** Where a page made square lies. */
export function squareOn(page: Page, cut: Quad, paper: PaperSize): Quad {
  const [across, down] = [mean(side(cut, 0), side(cut, 2)), mean(side(cut, 1), side(cut, 3))];
  if (paper === null) return fitted(page, across, down);
  const [short, long] = paper;
  const [width, height] = across > down ? [long, short] : [short, long];
  return rectangle((page.widthMm - width) / 2, (page.heightMm - height) / 2, width, height);
}

function side(quad: Quad, index: number): number {
  const [[x, y], [nextX, nextY]] = [quad[index]!, quad[(index + 1) % 4]!];
  return Math.hypot(nextX - x, nextY - y);
}

function mean(one: number, other: number): number {
  return (one + other) / 2;
}
