import type { Millimetres } from "../base/units.ts";
import type { Stroke } from "./ink.ts";
import type { Anchor, Spot, Weight } from "./mark.ts";
import { millimetresOf } from "./scale.ts";

/** A place on paper, in millimetres; x to the right, y down. */
export interface PaperSpot {
  readonly x: Millimetres;
  readonly y: Millimetres;
}

/** A run of straight lines on paper. */
export interface Run {
  readonly spots: readonly PaperSpot[];
  readonly closed: boolean;
}

/** How a line is drawn on paper. Joins are round where the ends are, else mitred. */
export interface Pen {
  readonly colour: string;
  readonly width: Millimetres;
  readonly dash?: readonly Millimetres[];
  readonly cap: "butt" | "round";
}

interface Coloured {
  readonly fill?: string;
  readonly pen?: Pen;
}

/**
 * What a mark comes to in ink: shapes in millimetres with their colours. A painter of any kind draws these one after
 * the other, fill before line, and decides nothing.
 */
export type Paint =
  | ({ readonly paint: "lines"; readonly runs: readonly Run[] } & Coloured)
  | ({ readonly paint: "circle"; readonly at: PaperSpot; readonly radius: Millimetres } & Coloured)
  | ({
      readonly paint: "arc";
      readonly at: PaperSpot;
      readonly radius: Millimetres;
      readonly from: number;
      readonly to: number;
    } & Coloured)
  | ({
      readonly paint: "box";
      readonly at: PaperSpot;
      readonly width: Millimetres;
      readonly height: Millimetres;
      readonly corner: Millimetres;
    } & Coloured)
  | {
      readonly paint: "words";
      readonly at: PaperSpot;
      readonly text: string;
      /** Height of the type's body. */
      readonly size: Millimetres;
      readonly weight: Weight;
      readonly anchor: Anchor;
      readonly turn: number;
      readonly colour: string;
    };

/** A spot of the drawing on paper. */
export function onPaper(spot: Spot): PaperSpot {
  return { x: millimetresOf(spot.x), y: millimetresOf(spot.y) };
}

/** The pen of a stroke that is not set off to a side. */
export function penOf(stroke: Stroke): Pen {
  const { colour, width, cap, dash } = stroke;
  return { colour, width, cap, ...(dash && { dash }) };
}
