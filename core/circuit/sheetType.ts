import type { GridUnits } from "../base/units.ts";
import type { Anchor, Role, Spot, TextMark, Weight } from "../drawing/mark.ts";
import { textWidth } from "../drawing/measure.ts";
import { CAP_HEIGHT, DESCENT, pointsToGrid } from "../drawing/type.ts";

/** One way of setting type on a circuit sheet. */
export interface SheetType {
  readonly points: number;
  readonly weight: Weight;
  readonly role: Role;
}

/** Least size of type on paper, points. */
const LEAST_POINTS = 7.5;

/** Sizes of a circuit sheet at its own size: a screen pixel at 100 % is 0.75 point. */
const TYPES = {
  designator: { points: 10.5, weight: 600, role: "text" },
  name: { points: 9, weight: 400, role: "text-quiet" },
  setting: { points: 9, weight: 400, role: "text" },
  terminal: { points: 8, weight: 400, role: "text-quiet" },
  volts: { points: 9, weight: 600, role: "text" },
  code: { points: 8.25, weight: 400, role: "text" },
  wire: { points: 7.5, weight: 400, role: "text-quiet" },
  flag: { points: 8.5, weight: 400, role: "text" },
} as const satisfies Readonly<Record<string, SheetType>>;

/** The type of every use on a sheet, grown for the scale it is printed at. */
export type SheetTypes = Readonly<Record<keyof typeof TYPES, SheetType>>;

/** Least size of a designator as a share of the smallest type, so that it leads however small the page is printed. */
const LEADING = 1.2;

/**
 * The sizes for a page shown at this share of its own size: type that would come out under the least size grows. Among
 * other words designators lead; alone they need not.
 */
export function sheetTypes(share: number, least = LEAST_POINTS, areAlone = false): SheetTypes {
  const leading = areAlone ? 1 : LEADING;
  const grown = Object.entries(TYPES).map(([use, type]): [string, SheetType] => [
    use,
    { ...type, points: leastPoints(type.points, use === "designator" ? share / leading : share, least) },
  ]);
  return Object.fromEntries(grown) as SheetTypes;
}

/** A size in points, grown where it would come out under the least size. */
export function leastPoints(points: number, share: number, least = LEAST_POINTS): number {
  return Math.max(points, least / share);
}

/** A line of type with its baseline at `at`. */
export function words(text: string, at: Spot, type: SheetType, anchor: Anchor = "start", of?: string): TextMark {
  const { points, weight, role } = type;
  return { mark: "text", at, text, points, weight, anchor, role, ...(of !== undefined && { of }) };
}

/** Height of capitals, depth below the line, and distance of baselines, for a size in points. */
export function rise(points: number): GridUnits {
  return pointsToGrid(points) * CAP_HEIGHT;
}

/** How far type of these points reaches below its baseline. */
export function depth(points: number): GridUnits {
  return pointsToGrid(points) * DESCENT;
}

/** Whether some letter of a text reaches below its baseline. */
export function hangs(text: string): boolean {
  return /[gjpqyQ,;()]/.test(text);
}

/** From one baseline to the next for type of these points. */
export function lead(points: number): GridUnits {
  return pointsToGrid(points) * 1.18;
}

/** Width of a text in this type. */
export function widthOf(text: string, type: SheetType): GridUnits {
  return textWidth(text, type.points, type.weight);
}
