import type { GridUnits } from "../base/units.ts";
import type { Spot } from "../drawing/mark.ts";
import type { Bounds } from "../drawing/measure.ts";
import { GRID_MM, gridUnitsOf, millimetresOf } from "../drawing/scale.ts";
import type { Page } from "./circuit.ts";

/** How a sheet is shared out, in grid units of the page. */
export interface SheetArea {
  readonly width: GridUnits;
  readonly height: GridUnits;
  /** The thin outer frame, and the heavy one inside it; the zones' names stand between them. */
  readonly outer: Bounds;
  readonly frame: Bounds;
  readonly columns: number;
  readonly rows: number;
  readonly banner: Bounds;
  readonly legend: Bounds;
  readonly title: Bounds;
  /** What is left for the drawing. */
  readonly drawing: Bounds;
}

const OUTER_MARGIN = gridUnitsOf(5);
const ZONE_STRIP = gridUnitsOf(4);
const BANNER_HEIGHT = gridUnitsOf(8.5);
const TITLE_HEIGHT = gridUnitsOf(21);
const LEGEND_HEIGHT = gridUnitsOf(21);
/** A frame at least this wide has the legend beside the title block, a narrower one above it. */
const WIDE = gridUnitsOf(330);
const TITLE_WIDTH = gridUnitsOf(180);
/** Usual size of a zone: a field of 50 mm. */
const ZONE = 52.5 / GRID_MM;

/** Shares out the sheet of a page: frame, zones, banner, legend and title block, and room for the drawing. */
export function sheetArea(page: Page): SheetArea {
  const width = gridUnitsOf(page.widthMm);
  const height = gridUnitsOf(page.heightMm);
  const outer = shrunk({ left: 0, top: 0, right: width, bottom: height }, OUTER_MARGIN);
  const frame = shrunk(outer, ZONE_STRIP);
  const isWide = frame.right - frame.left >= WIDE;
  const banner = { ...frame, bottom: frame.top + BANNER_HEIGHT };
  const titleTop = frame.bottom - TITLE_HEIGHT;
  const title = { ...frame, top: titleTop, left: isWide ? frame.right - TITLE_WIDTH : frame.left };
  const legend = isWide
    ? { ...frame, top: titleTop, right: title.left }
    : { ...frame, top: titleTop - LEGEND_HEIGHT, bottom: titleTop };
  return {
    width,
    height,
    outer,
    frame,
    columns: Math.max(1, Math.round(width / ZONE)),
    rows: Math.max(1, Math.round(height / ZONE)),
    banner,
    legend,
    title,
    drawing: { ...frame, top: banner.bottom, bottom: legend.top },
  };
}

/** What is left for the drawing, as a box of the page in millimetres: there printed pages lie under it. */
export function drawingBoxMm(page: Page): Bounds {
  const { left, top, right, bottom } = sheetArea(page).drawing;
  return {
    left: millimetresOf(left),
    top: millimetresOf(top),
    right: millimetresOf(right),
    bottom: millimetresOf(bottom),
  };
}

function shrunk({ left, top, right, bottom }: Bounds, by: GridUnits): Bounds {
  return { left: left + by, top: top + by, right: right - by, bottom: bottom - by };
}

/** The letter of a zone's row: A, B, ... without I and O, which read as figures. */
export function rowLetter(row: number): string {
  return "ABCDEFGHJKLMNPQRSTUVWXYZ"[row] ?? "?";
}

/** The zone of a spot as the frame names it: `D2` is the fourth row from the top, second column from the left. */
export function zoneOf(area: SheetArea, spot: Spot): string {
  const share = (at: number, from: number, to: number, count: number) =>
    Math.min(count - 1, Math.max(0, Math.floor(((at - from) / (to - from)) * count)));
  const column = share(spot.x, area.frame.left, area.frame.right, area.columns);
  const row = share(spot.y, area.frame.top, area.frame.bottom, area.rows);
  return `${rowLetter(row)}${column + 1}`;
}
