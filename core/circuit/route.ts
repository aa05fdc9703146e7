import type { WireId } from "../base/ids.ts";
import type { Spot } from "../drawing/mark.ts";
import { Laying } from "./routeLaying.ts";
import type { RouteMemory } from "./routeMemory.ts";
import type { RoutePage } from "./routePage.ts";

/** Wires laid, and what the next laying of the page after an edit takes from this one. */
export interface Routes {
  /** Corners of every wire from terminal to terminal. A wire that finds no way is not in it. */
  readonly corners: ReadonlyMap<WireId, readonly Spot[]>;
  readonly memory: RouteMemory;
}

/** How often the dearest wires are taken up and laid anew after all have been laid. */
const ROUNDS = 2;

/**
 * Lays every wire at right angles on the grid of one unit: round bodies, off words, off other wires, with few crossings
 * and bends. Short ones are laid first. What is left of the laying `before` is taken from it; the wires come to lie as
 * they would without it, and the corners of one that lies as before are the same object.
 */
export function routeWires(page: RoutePage, before: RouteMemory | null = null): Routes {
  const laying = new Laying(page, before);
  laying.layAll();
  for (let round = 0; round < ROUNDS; round++) laying.layDearestAnew();
  return laying.routes();
}
