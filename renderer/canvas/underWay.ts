import type { PartId, PointId, WireId } from "../../core/base/ids.ts";
import type { GridUnits } from "../../core/base/units.ts";
import type { Spot } from "../../core/drawing/mark.ts";
import type { Pair } from "../../core/edit/connectorSides.ts";
import type { Bends } from "../../core/edit/setBends.ts";
import type { Ghost } from "./ghost.ts";
import type { StandsOn } from "./standsOn.ts";

// What a gesture or a tool has under way, as it is painted over the drawing. Nothing of it is on the bench yet.

/** A load on its way, as it is painted: where it would be put down. */
export type Carried =
  | {
      readonly is: "parts";
      readonly parts: readonly PartId[];
      readonly dx: GridUnits;
      readonly dy: GridUnits;
      readonly standsOn: readonly StandsOn[];
    }
  | { readonly is: "piece"; readonly wire: WireId; readonly line: readonly Spot[]; readonly bends: Bends | null }
  | {
      readonly is: "end";
      readonly wire: WireId;
      readonly end: "from" | "to";
      readonly line: readonly Spot[];
      readonly point: PointId | null;
    };

/** Where a wire that is being drawn ends now: on a point, on another wire, or on bare paper. */
export interface PenEnd {
  readonly spot: Spot;
  readonly point: PointId | null;
  readonly wire: string | null;
}

/** What a tool has under way, painted over the drawing. */
export interface PenShown {
  /** The part or assembly that a click would place. */
  readonly ghost: Ghost | null;
  /** The wire so far, from its first point to where the pointer is. */
  readonly line: readonly Spot[];
  readonly end: PenEnd | null;
  /** Terminals that are gathered, and the wires that a click would draw from them. */
  readonly gathered: readonly PointId[];
  readonly pairs: readonly Pair[];
}
