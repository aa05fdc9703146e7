import type { GridUnits, Millimetres } from "../base/units.ts";

/** One grid unit of the drawing, in millimetres of the printed page. */
export const GRID_MM: Millimetres = 2.5;

/** One point of type, in millimetres. */
export const POINT_MM: Millimetres = 25.4 / 72;

/** Grid units as millimetres of paper. */
export function millimetresOf(units: GridUnits): Millimetres {
  return units * GRID_MM;
}

/** Millimetres of paper as grid units. */
export function gridUnitsOf(millimetres: Millimetres): GridUnits {
  return millimetres / GRID_MM;
}
