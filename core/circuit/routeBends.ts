import type { Spot } from "../drawing/mark.ts";
import type { RouteEnd } from "./routeEnds.ts";
import { directionOf, nodeAt, type RouteGrid } from "./routeGrid.ts";
import type { Way } from "./routeTaken.ts";

/**
 * The corners of a wire whose bends a person has set: right angles throughout. Where two bends do not lie on one line
 * an elbow is put in; the first leg leaves along the first terminal's side, the last enters along the second's.
 */
export function cornersOf(
  from: RouteEnd,
  to: RouteEnd,
  bends: readonly (readonly [number, number])[],
): readonly Spot[] {
  const spots = [from.spot, ...bends.map(([x, y]) => ({ x, y })), to.spot];
  const corners: Spot[] = [from.spot];
  let isLevel = directionOf(from.side) % 2 === 0;
  for (let i = 1; i < spots.length; i++) {
    const here = corners[corners.length - 1]!;
    const next = spots[i]!;
    if (here.x === next.x && here.y === next.y) continue;
    if (here.x !== next.x && here.y !== next.y) {
      if (i === spots.length - 1 && i > 1) isLevel = directionOf(to.side) % 2 !== 0;
      corners.push(isLevel ? { x: next.x, y: here.y } : { x: here.x, y: next.y });
    }
    corners.push(next);
    isLevel = corners[corners.length - 2]!.x === next.x;
  }
  return straightened(corners);
}

/** The same line without the spots between two ends of one straight stretch. */
export function straightened(spots: readonly Spot[]): readonly Spot[] {
  return spots.filter((spot, i) => {
    const before = spots[i - 1];
    const after = spots[i + 1];
    if (before === undefined || after === undefined) return true;
    const isLevel = before.y === spot.y && spot.y === after.y;
    const isUpright = before.x === spot.x && spot.x === after.x;
    return !isLevel && !isUpright;
  });
}

/** Every node that a line of corners runs over; parts of it off the page are left out. */
export function nodesAlong(grid: RouteGrid, corners: readonly Spot[]): Way {
  const nodes: number[] = [];
  for (let i = 0; i < corners.length; i++) {
    const here = corners[i]!;
    const from = corners[i - 1] ?? here;
    const length = Math.max(Math.abs(here.x - from.x), Math.abs(here.y - from.y), 1);
    for (let step = 0; step <= length; step++) {
      const share = step / length;
      const node = nodeAt(grid, { x: from.x + (here.x - from.x) * share, y: from.y + (here.y - from.y) * share });
      if (node >= 0 && node !== nodes[nodes.length - 1]) nodes.push(node);
    }
  }
  return nodes;
}
