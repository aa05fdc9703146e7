import type { GridUnits } from "../base/units.ts";
import type { Bounds } from "../drawing/measure.ts";
import type { ArrangeNode, ArrangePose } from "./arrange.ts";

/** A part while it is being pushed about. */
export interface Spread {
  readonly node: ArrangeNode;
  readonly pose: ArrangePose;
  readonly x: GridUnits;
  readonly y: GridUnits;
}

/** Its outline on the page. */
export function boxOf({ pose, x, y }: Spread): Bounds {
  return { left: x, top: y, right: x + pose.width, bottom: y + pose.height };
}
