import type { Stroke } from "../../core/drawing/ink.ts";
import type { LineMark, Mark, Spot } from "../../core/drawing/mark.ts";
import type { Paint, Pen } from "../../core/drawing/paint.ts";
import { GRID_MM } from "../../core/drawing/scale.ts";

/** A line of at least this weight on paper, millimetres, keeps two pixels however far one zooms out. */
const HEAVY_MM = 0.6;
/** Pixels of paper that stay between the two lines of a pair. */
const LEAST_GAP = 2;

/**
 * A mark moved onto whole pixels, so that straight lines are sharp on a coarse screen: every place goes to the nearest
 * pixel, and what meets there still meets. Small filled shapes and type keep their form and stay. `pixels` are screen
 * pixels for each millimetre.
 */
export function fitMark(mark: Mark, pixels: number): Mark {
  const unit = GRID_MM * pixels;
  const whole = (value: number): number => Math.round(value * unit) / unit;
  const onto = ({ x, y }: Spot): Spot => ({ x: whole(x), y: whole(y) });
  switch (mark.mark) {
    case "line":
      return keepsForm(mark) ? mark : { ...mark, spots: mark.spots.map(onto) };
    case "circle":
    case "arc":
      return { ...mark, at: onto(mark.at) };
    case "box":
    case "swatch": {
      const at = onto(mark.at);
      const width = Math.max(whole(mark.at.x + mark.width) - at.x, 1 / unit);
      const height = Math.max(whole(mark.at.y + mark.height) - at.y, 1 / unit);
      return { ...mark, at, width, height };
    }
    case "text":
      return mark;
  }
}

/** Closed shapes with slanting sides: chevrons, triangles, diamonds. */
function keepsForm({ spots, closed }: LineMark): boolean {
  return closed === true && spots.some(({ x, y }, i) => x !== spots.at(i - 1)!.x && y !== spots.at(i - 1)!.y);
}

/** A stroke a whole number of pixels wide; of a pair, both lines with their edges on whole pixels and paper between. */
export function fitStroke(stroke: Stroke, pixels: number): Stroke {
  const width = fittedWidth(stroke.width, pixels);
  if (!stroke.offset) return { ...stroke, width: width / pixels };
  const wanted = Math.abs(stroke.offset) * pixels - width / 2;
  const offset = Math.max(Math.round(wanted), LEAST_GAP / 2) + width / 2;
  return { ...stroke, width: width / pixels, offset: (Math.sign(stroke.offset) * offset) / pixels };
}

/** Pens of paints that are no strokes of a role, such as the edge of a swatch. */
export function fitPaint(paint: Paint, pixels: number): Paint {
  if (paint.paint === "words" || !paint.pen) return paint;
  const pen: Pen = { ...paint.pen, width: fittedWidth(paint.pen.width, pixels) / pixels };
  return { ...paint, pen };
}

function fittedWidth(width: number, pixels: number): number {
  return Math.max(Math.round(width * pixels), width >= HEAVY_MM ? 2 : 1);
}
