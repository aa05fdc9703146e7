import type { ControlKey } from "../../core/base/ids.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { sheetOf } from "../../core/circuit/sheet.ts";
import { dimmedShare, type Palette } from "../../core/drawing/ink.ts";
import { boundsOfAll } from "../../core/drawing/measure.ts";
import { lengthText } from "../../core/drawing/pathText.ts";
import { millimetresOf } from "../../core/drawing/scale.ts";
import { svgOf } from "../../core/drawing/svg.ts";
import type { Bench } from "../../core/edit/bench.ts";
import type { Live } from "../../core/live/live.ts";
import { thrownTo, throwsOn } from "../canvas/throwPlaces.ts";
import { FULL_SIZE } from "../canvas/viewport.ts";

const SVG = "http://www.w3.org/2000/svg";
/** Paper round the drawing, millimetres. */
const MARGIN = 4;
const LOOK = "iec";
/** A blade is hit this near it, pixels. */
const HIT_WIDTH = 24;

/** Shown of a page on which nothing stands. */
const EMPTY: SheetBox = [0, 0, 100, 60];

/** A control, and the position it is to go to. */
export interface ControlThrown {
  readonly control: ControlKey;
  readonly position: string;
}

/** A box of the sheet: left, top, width and height in millimetres. */
export type SheetBox = readonly [left: number, top: number, width: number, height: number];

/** The box round all that is drawn on a page at rest, with its words set for 100 % and for this zoom. */
export function boxOf(circuit: Circuit, page: string, level: number): SheetBox {
  const marks = [1, level].flatMap((zoom) => {
    const drawn = sheetOf({ circuit, page, zoom });
    return drawn.ok ? drawn.value.marks : [];
  });
  const bounds = boundsOfAll(marks);
  if (!bounds) return EMPTY;
  const [left, top] = [millimetresOf(bounds.left) - MARGIN, millimetresOf(bounds.top) - MARGIN];
  return [left, top, millimetresOf(bounds.right) + MARGIN - left, millimetresOf(bounds.bottom) + MARGIN - top];
}

/** What a drawing of a page shows. */
export interface Drawn {
  readonly circuit: Circuit;
  readonly page: string;
  readonly live: Live;
  readonly palette: Palette;
  /** Ids drawn in full; null for all. */
  readonly full: ReadonlySet<string> | null;
  readonly zoom: number;
  /** Zoom at which the words are set. */
  readonly level: number;
  readonly box: SheetBox;
}

/** A page as SVG at a zoom, with a place to press over every blade. */
export function drawingOf(drawn: Drawn): SVGSVGElement | null {
  const { circuit, page, live, palette, full, zoom, level, box } = drawn;
  const sheet = sheetOf({ circuit, page, live, zoom: level });
  if (!sheet.ok) return null;
  const svg = svgElement(svgOf(sheet.value, { palette, inPage: true, ...(full && { full }) }));
  const scale = FULL_SIZE * zoom;
  svg.setAttribute("viewBox", box.map(lengthText).join(" "));
  svg.setAttribute("width", lengthText(box[2] * scale));
  svg.setAttribute("height", lengthText(box[3] * scale));
  // Dots where wires join belong to none of them.
  if (full)
    for (const dot of svg.querySelectorAll(":scope > circle")) dot.setAttribute("opacity", `${dimmedShare(palette)}`);
  svg.append(throwHits(circuit, page, scale));
  return svg;
}

/** SVG text as an element. It is read as XML, in which nothing runs. */
export function svgElement(text: string): SVGSVGElement {
  const { documentElement } = new DOMParser().parseFromString(text, "image/svg+xml");
  return document.importNode(documentElement, true) as unknown as SVGSVGElement;
}

function throwHits(circuit: Circuit, page: string, scale: number): SVGGElement {
  const group = document.createElementNS(SVG, "g");
  group.setAttribute("class", "throws");
  group.setAttribute("stroke-width", lengthText(HIT_WIDTH / scale));
  for (const [place, { foot, tip }] of throwsOn(circuit, page, LOOK).places.entries()) {
    const line = document.createElementNS(SVG, "line");
    const ends = { x1: foot.x, y1: foot.y, x2: tip.x, y2: tip.y };
    for (const [name, value] of Object.entries(ends)) line.setAttribute(name, lengthText(millimetresOf(value)));
    line.dataset.throw = String(place);
    group.append(line);
  }
  return group;
}

/** The throw that a press on the drawing asks for; null where it hits no blade. */
export function throwAt(
  { circuit, condition }: Pick<Bench, "circuit" | "condition">,
  page: string,
  hit: Element,
): ControlThrown | null {
  const { places, controls } = throwsOn(circuit, page, LOOK);
  const place = hit instanceof SVGElement ? places[Number(hit.dataset.throw)] : undefined;
  const control = place && controls.get(place.control);
  if (!control) return null;
  const now = condition.set?.[control.key] ?? control.positions[0]!;
  return { control: control.key, position: thrownTo(place, control, now) };
}
