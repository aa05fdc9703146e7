import type { GridUnits } from "../base/units.ts";
import { FONT_WIDTHS } from "./fontWidths.ts";
import type { Weight } from "./mark.ts";
import { gridUnitsOf, POINT_MM } from "./scale.ts";

/** Heights of the shipped font in shares of the type size: of capitals and figures, of the tallest letter, below the line. */
export const CAP_HEIGHT = 0.698;
export const ASCENT = 0.78;
export const DESCENT = 0.22;

/** Thousandths of the type size for a character that the shipped font has not. */
const UNKNOWN_WIDTH = 600;

const tables = new Map<Weight, ReadonlyMap<number, number>>();

function widthsOf(weight: Weight): ReadonlyMap<number, number> {
  const known = tables.get(weight);
  if (known) return known;
  const widths = new Map<number, number>();
  for (const [first, run] of FONT_WIDTHS[weight]) {
    for (const [i, width] of run.entries()) widths.set(first + i, width);
  }
  tables.set(weight, widths);
  return widths;
}

/** Points of type as grid units. */
export function pointsToGrid(points: number): GridUnits {
  return gridUnitsOf(points * POINT_MM);
}

/** Width of one line of the shipped font, without kerning, as every painter sets it. */
export function textWidth(text: string, points: number, weight: Weight): GridUnits {
  return pointsToGrid((points * thousandthsOf(text, weight)) / 1000);
}

/** So many texts are kept measured: a sheet sets the same words again at every place that it tries. */
const MOST_MEASURED = 20_000;
const measured = new Map<string, number>();

/** Width of a text in thousandths of the type size. */
function thousandthsOf(text: string, weight: Weight): number {
  const key = `${weight} ${text}`;
  const known = measured.get(key);
  if (known !== undefined) return known;
  const widths = widthsOf(weight);
  let thousandths = 0;
  for (const character of text.normalize("NFC")) thousandths += widths.get(character.codePointAt(0)!) ?? UNKNOWN_WIDTH;
  if (measured.size >= MOST_MEASURED) measured.clear();
  measured.set(key, thousandths);
  return thousandths;
}
