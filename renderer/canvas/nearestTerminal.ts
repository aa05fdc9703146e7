import type { PointId } from "../../core/base/ids.ts";
import type { Spot } from "../../core/drawing/mark.ts";
import type { Standing } from "./standing.ts";

/** How much farther a terminal that lies off to the side counts than one straight ahead. */
const SIDEWAYS = 2.5;

/**
 * The terminal nearest to a spot; with a way, the nearest one that lies that way, so that arrow keys go from terminal to
 * terminal. Null where there is none.
 */
export function nearestTerminal(
  { points }: Standing,
  from: Spot,
  way: readonly [number, number] | null,
): PointId | null {
  let best: { readonly point: PointId; readonly cost: number } | null = null;
  for (const [point, { x, y }] of points) {
    const [dx, dy] = [x - from.x, y - from.y];
    const ahead = way ? dx * way[0] + dy * way[1] : 0;
    if (way && ahead <= 0) continue;
    const aside = way ? Math.abs(dx * way[1]) + Math.abs(dy * way[0]) : 0;
    const cost = way ? ahead + SIDEWAYS * aside : Math.hypot(dx, dy);
    if (best === null || cost < best.cost) best = { point, cost };
  }
  return best?.point ?? null;
}
