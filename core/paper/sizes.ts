import type { Millimetres } from "../base/units.ts";
import type { Weight } from "../drawing/mark.ts";
import { POINT_MM } from "../drawing/scale.ts";

/** A size of type: points, weight, and the height of its line in millimetres. */
export interface TypeSize {
  readonly points: number;
  readonly weight: Weight;
  readonly line: Millimetres;
}

/** The height of a line of this many points, with this much lead. */
function size(points: number, weight: Weight, lead = 1.2): TypeSize {
  return { points, weight, line: points * POINT_MM * lead };
}

/**
 * Every size of type on a sheet. What is read at arm's length (number, pin, colour, range, hold) has capitals of at least
 * 2.5 mm: 10.5 points.
 */
export const TYPE = {
  rowNumber: size(22, 700, 1.1),
  title: size(17, 700),
  laterTitle: size(12, 700),
  sheetNumber: size(15, 700, 1.06),
  laterNumber: size(12.5, 700),
  placeLetter: size(15, 700),
  placeName: size(11, 700, 1.1),
  placeWork: size(9.4, 400, 1.12),
  placeWarning: size(9.4, 600, 1.12),
  minutes: size(13, 700, 1),
  range: size(13.5, 700),
  rangeUnit: size(9, 600),
  sweepRange: size(10.5, 700, 1.1),
  sweepPosition: size(9, 700, 1.1),
  pin: size(11.5, 700, 1.05),
  lead: size(8, 400),
  colour: size(10.5, 600, 1.05),
  act: size(10.5, 700, 1.18),
  set: size(10, 400, 1.22),
  lampSet: size(9, 600, 1.1),
  instrument: size(8.5, 400),
  lamp: size(8, 600, 1.15),
  limit: size(8, 400, 1.15),
  tick: size(8, 400, 1),
  unit: size(9, 400),
  note: size(8.4, 400, 1.16),
  warning: size(8.4, 700, 1.16),
  columnTitle: size(8.2, 600),
  caution: size(9.2, 400),
  cautionWord: size(12.5, 700, 1),
  body: size(9, 400),
  block: size(8.8, 400),
  headValue: size(10.5, 600, 1.1),
  headText: size(10, 400, 1.1),
  laterValue: size(9.5, 600, 1.15),
  small: size(7.5, 400, 1.05),
  smallBold: size(7.5, 700, 1.05),
  signOff: size(8.5, 400),
  cavity: size(8.5, 400, 1),
  cavityMarked: size(8.5, 700, 1),
  cavityEmpty: size(7, 400, 1),
  caption: size(7.5, 700, 1.1),
  tableTitle: size(12, 700, 1.15),
  tablePin: size(13.5, 700, 1.05),
  tableLead: size(9, 400, 1.1),
  tableColumn: size(9.6, 700, 1.1),
  tableUnder: size(8, 400, 1.1),
  tableGroup: size(9, 600),
  tableVolts: size(11, 700, 1),
  tableVoltsLight: size(11, 400, 1),
  tableDrifts: size(9.5, 700, 1),
  tableDriftsLight: size(9.5, 400, 1),
  tableSign: size(8, 400, 1),
  bigPin: size(12.5, 700, 1),
  bigColour: size(8.4, 700, 1),
  ownerTitle: size(20, 700),
  ownerHead: size(12.5, 700),
  ownerText: size(12.5, 400, 1.35),
  ownerFigure: size(24, 700, 1.1),
  ownerSmall: size(10, 400, 1.25),
  ownerName: size(10.5, 700, 1.15),
  proofValue: size(12.5, 700, 1.1),
} as const satisfies Readonly<Record<string, TypeSize>>;

/** Height of a column of type in millimetres: capitals and figures stand on the line, tails hang below. */
export function sizeMm(type: TypeSize): Millimetres {
  return type.points * POINT_MM;
}
