import type { PointId } from "../../core/base/ids.ts";
import { remember } from "../../core/base/memo.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { type SheetFar, type SheetLive, sheetOf } from "../../core/circuit/sheet.ts";
import type { Palette } from "../../core/drawing/ink.ts";
import type { Mark } from "../../core/drawing/mark.ts";
import { type Bounds, boundsOfAll, distanceTo } from "../../core/drawing/measure.ts";
import { lengthText } from "../../core/drawing/pathText.ts";
import { gridUnitsOf, millimetresOf } from "../../core/drawing/scale.ts";
import { svgOf } from "../../core/drawing/svg.ts";
import type { Look } from "../../core/parts/kind.ts";
import { FULL_SIZE } from "../canvas/viewport.ts";
import type { Ids } from "./focus.ts";
import { markedPoints } from "./markedPoints.ts";

/** What a class is shown of a page. */
export interface PictureWish {
  readonly circuit: Circuit;
  readonly page: string;
  readonly live: SheetLive;
  /** The same moment while what flashes is dark; null where nothing does. */
  readonly dark: SheetLive | null;
  readonly palette: Exclude<Palette, "black">;
  readonly look: Look;
  /** What is drawn in full and named; null for all. */
  readonly focus: Ids | null;
  /** Points that are asked about: the first is A, the other B. */
  readonly marked?: readonly PointId[];
  /** Room for the drawing, and height of its words, in pixels. */
  readonly width: number;
  readonly height: number;
  readonly words: number;
}

/** A page for a class as SVG without size of its own: while what flashes is lit, and while it is dark. */
export interface Picture {
  readonly lit: string;
  readonly dark: string | null;
}

/** Nearer than this a few parts would fill the wall (our own number). */
const NEAREST = 2.6;
/** Room for words at the edges, in heights of a word. */
const BESIDE = 2.4;
const ABOVE = 1.4;
/** Width of a powered wire in heights of a word: 7.8 pixels beside words of 48. */
const WIRE = 7.8 / 48;
/** A dot lies on a line that is nearer than this, grid units. */
const ON_THE_LINE = 0.2;
/** Width of a powered wire on paper, millimetres; and how much heavier lines may grow before neighbours touch. */
const WIRE_MM = 0.8;
const HEAVIEST = 2.2;

/** Draws the page round what is in focus, with words of the height that is asked for however near it is. */
export function pictureOf(wish: PictureWish): Picture | null {
  const { circuit, page, look, focus, words, live, dark } = wish;
  const box = boxOf(wish);
  if (!box) return null;
  const { zoom, seen } = fitted(box, wish);
  const far: SheetFar = { pixels: words, named: focus, seen };
  const drawn = (now: SheetLive): string => {
    const sheet = sheetOf({ circuit, page, look, zoom, far, live: now });
    if (!sheet.ok) return "";
    const { marks } = sheet.value;
    const shown = focus === null ? marks : marks.filter((mark) => !isDotOfOthers(mark, marks, focus));
    const svg = svgOf({ ...sheet.value, marks: [...shown, ...markedPoints(wish, zoom)] }, options(wish, zoom));
    return svgAt(svg, seen);
  };
  return { lit: drawn(live), dark: dark && drawn(dark) };
}

const boxesOf = remember((_circuit: Circuit) => new Map<string, Bounds | undefined>());

/** The box round what is in focus, at rest and without words; remembered, since a throw does not change it. */
function boxOf({ circuit, page, look, focus }: PictureWish): Bounds | undefined {
  const boxes = boxesOf(circuit);
  const key = `${page} ${look} ${focus === null ? "" : [...focus].join(" ")}`;
  if (!boxes.has(key)) {
    const plain = sheetOf({ circuit, page, look, zoom: 1 });
    const marks = plain.ok ? plain.value.marks : [];
    boxes.set(key, boundsOfAll(marks.filter((mark) => isOfFocus(mark, focus))));
  }
  return boxes.get(key);
}

function isOfFocus(mark: Mark, focus: Ids | null): boolean {
  return mark.mark !== "text" && (focus === null || (mark.of !== undefined && focus.has(mark.of)));
}

/** A dot where only wires join that are not in focus: it belongs to none of them, and would stand out. */
function isDotOfOthers(dot: Mark, marks: readonly Mark[], focus: Ids): boolean {
  if (dot.mark !== "circle" || dot.of !== undefined) return false;
  const isAt = (mark: Mark): boolean =>
    mark.mark === "line" && mark.of !== undefined && focus.has(mark.of) && distanceTo(mark, dot.at) < ON_THE_LINE;
  return !marks.some(isAt);
}

/** The zoom at which a box and the words round it fill the room, and what of the page is seen then. */
function fitted(box: Bounds, { width, height, words }: PictureWish): { readonly zoom: number; readonly seen: Bounds } {
  const [wide, high] = [millimetresOf(box.right - box.left), millimetresOf(box.bottom - box.top)];
  const across = (width - 2 * BESIDE * words) / Math.max(wide, 1);
  const up = (height - 2 * ABOVE * words) / Math.max(high, 1);
  const scale = Math.max(Math.min(across, up, NEAREST * FULL_SIZE), 0.1);
  const [x, y] = [(box.left + box.right) / 2, (box.top + box.bottom) / 2];
  const [half, halfHigh] = [gridUnitsOf(width / scale / 2), gridUnitsOf(height / scale / 2)];
  return {
    zoom: scale / FULL_SIZE,
    seen: { left: x - half, right: x + half, top: y - halfHigh, bottom: y + halfHigh },
  };
}

function options({ palette, focus, words }: PictureWish, zoom: number) {
  const heaviness = Math.min(Math.max(1, (words * WIRE) / (WIRE_MM * FULL_SIZE * zoom)), HEAVIEST);
  return { palette, inPage: true, isClear: true, heaviness, ...(focus && { full: focus }) } as const;
}

/** The SVG cut to what is seen, as large as its room. */
function svgAt(svg: string, { left, top, right, bottom }: Bounds): string {
  const box = [left, top, right - left, bottom - top].map((length) => lengthText(millimetresOf(length))).join(" ");
  return svg.replace(/viewBox="[^"]*"/, `viewBox="${box}"`).replace(/ (width|height)="[\d.]+mm"/g, "");
}
