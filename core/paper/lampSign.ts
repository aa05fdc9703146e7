import type { Millimetres } from "../base/units.ts";
import type { Mark } from "../drawing/mark.ts";
import { gridUnitsOf } from "../drawing/scale.ts";
import type { Brightness } from "../trade/instruments.ts";
import { ring, stroke } from "./cell.ts";

const BULB: Millimetres = 1.1;
const RAYS = 8;
const RAY_FROM: Millimetres = 1.4;
const RAY_TO: Millimetres = 2.05;
const HALF_STEPS = 12;

/** Height of a lamp's sign with its rays. */
export const LAMP_SIGN: Millimetres = 2 * RAY_TO + 0.3;

/** How a lamp burns, its middle at x, y: filled with rays where bright, half filled where dim, a ring where dark. */
export function lampMarks(looks: Brightness, x: Millimetres, y: Millimetres): readonly Mark[] {
  const bulb = ring("symbol-fine", x, y, BULB);
  if (looks === "dark") return [bulb];
  if (looks === "dim") return [halfDisc(x, y), bulb];
  const rays = Array.from({ length: RAYS }, (_, i) => {
    const way = (i * 2 * Math.PI) / RAYS;
    const [ux, uy] = [Math.cos(way), Math.sin(way)];
    return stroke("symbol-fine", x + ux * RAY_FROM, y + uy * RAY_FROM, x + ux * RAY_TO, y + uy * RAY_TO);
  });
  return [ring("solid", x, y, BULB + 0.15, true), ...rays];
}

/** The right half of a bulb, filled. */
function halfDisc(x: Millimetres, y: Millimetres): Mark {
  const spots = Array.from({ length: HALF_STEPS + 1 }, (_, i) => {
    const way = -Math.PI / 2 + (i * Math.PI) / HALF_STEPS;
    return { x: gridUnitsOf(x + Math.cos(way) * BULB), y: gridUnitsOf(y + Math.sin(way) * BULB) };
  });
  return { mark: "line", spots, role: "solid", closed: true, filled: true };
}
