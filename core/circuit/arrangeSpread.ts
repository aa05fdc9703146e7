import type { GridUnits } from "../base/units.ts";
import type { Bounds } from "../drawing/measure.ts";
import type { ArrangeNode, ArrangePose, Places } from "./arrange.ts";
import type { PartPlace } from "./circuit.ts";

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

/** The pose of a part in a place; its best where the place has a turn that is none of its poses. */
export function poseOf({ poses }: ArrangeNode, { turn = 0, flip = false }: PartPlace): ArrangePose {
  return poses.find((each) => each.turn === turn && each.flip === flip) ?? poses[0];
}

/** A part in its place among these, or where it stands. */
export function spreadAt(node: ArrangeNode, places: Places): Spread {
  const place = places.get(node.id) ?? node.place;
  return { node, pose: poseOf(node, place), x: place.x, y: place.y };
}
