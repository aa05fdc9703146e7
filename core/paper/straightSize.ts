import type { Millimetres } from "../base/units.ts";
import { POINT_MM } from "../drawing/scale.ts";
import { SHEET } from "./page.ts";
import type { TypeSize } from "./sizes.ts";

/** The inner frame, and between which heights the rows of a branch stand. */
export const FRAME = { left: 2.8, top: 2.8, right: SHEET.width - 2.8, bottom: SHEET.height - 2.8 } as const;
export const TITLE_HEIGHT: Millimetres = 21;
export const LEGEND_HEIGHT: Millimetres = 19.5;
export const ROWS = {
  top: 31.4,
  bottom: FRAME.bottom - TITLE_HEIGHT - LEGEND_HEIGHT - 0.8,
} as const satisfies Readonly<Record<string, Millimetres>>;

/** Where the columns of a branch begin; `line` is the line itself, `divider` parts the branch with a fault. */
export const AT = {
  where: 5.8,
  bracket: 35.4,
  part: 38.6,
  line: 66,
  end: 69.4,
  what: 83.6,
  mm2: 113.4,
  glyph: 119.8,
  volts: 122.6,
  /** Without a fault beside it: where a reading is written down, and where the row stands on the drawing. */
  read: 143,
  zone: 168,
  divider: 139.4,
  faultGlyph: 143.2,
  faultVolts: 146,
  faultLine: 166.5,
  faultPart: 170.2,
  right: 180.2,
} as const satisfies Readonly<Record<string, Millimetres>>;

/** Least heights of the bands that a sheet is made of, and how far they may be stretched to fill it. */
export const LEAST = {
  source: 10.4,
  part: 7.6,
  inline: 5.4,
  joint: 4.4,
  ground: 7.4,
  wire: 5.1,
  end: 5,
  heading: 8.6,
  note: 4.4,
} as const satisfies Readonly<Record<string, Millimetres>>;
export const MOST_STRETCH = 1.3;

/** More parts than this, in-line joints left out, go on on another sheet. */
export const MOST_PARTS = 12;

function size(points: number, weight: TypeSize["weight"], lead = 1.15): TypeSize {
  return { points, weight, line: points * POINT_MM * lead };
}

/** Sizes of type of a branch. */
export const STRAIGHT_TYPE = {
  title: size(17, 700),
  bannerLead: size(9, 400),
  column: size(8.2, 600),
  heading: size(10.5, 700),
  designator: size(11.5, 700),
  joint: size(8, 400),
  where: size(8.2, 400, 1.12),
  name: size(9, 600, 1.1),
  about: size(8, 400, 1.1),
  code: size(10.5, 600),
  mm2: size(8.5, 400),
  volts: size(10.5, 700),
  light: size(10.5, 400),
  end: size(7.5, 400, 1.05),
  tap: size(7.5, 400, 1.05),
  sign: size(10, 600),
  legend: size(8.2, 400),
  legendTitle: size(8.2, 700),
  label: size(7.5, 400, 1.05),
  value: size(10.5, 600),
} as const satisfies Readonly<Record<string, TypeSize>>;
