import type { WireId } from "../base/ids.ts";
import type { Bounds } from "../drawing/measure.ts";
import type { RouteEnd } from "./routeEnds.ts";

/** A wire to be laid. Bends that a person has set are kept as they are. */
export interface RouteWire {
  readonly id: WireId;
  readonly from: RouteEnd;
  readonly to: RouteEnd;
  readonly bends?: readonly (readonly [number, number])[];
}

/** What the wires of a page have to find their way through: bodies to go round, words to keep off where they can. */
export interface RoutePage {
  readonly bounds: Bounds;
  readonly bodies: readonly Bounds[];
  readonly words: readonly Bounds[];
  /** Straight ways across bodies, each as wide as a line. */
  readonly across?: readonly Bounds[];
  readonly wires: readonly RouteWire[];
}
