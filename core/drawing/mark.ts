import { WIRE_STATES, type WireState } from "../base/states.ts";
import type { GridUnits } from "../base/units.ts";
import type { ColourName } from "../trade/colourNames.ts";

/** A place on the drawing, in grid units of 2.5 mm; x to the right, y down. */
export interface Spot {
  readonly x: GridUnits;
  readonly y: GridUnits;
}

/** Roles that do not tell a wire state. */
export const PLAIN_ROLES = [
  // symbols of parts
  "symbol",
  "symbol-fine",
  "contact-now",
  "contact-rest",
  "link",
  "body",
  "terminal",
  "joint",
  "ray",
  // beside and on wires
  "chevron",
  "swatch",
  // frames of a drawing; frame of a caution and ring of the black lead; edges of tables, fields and places
  "frame",
  "frame-heavy",
  "caution",
  "table",
  "field",
  "place",
  // lines between rows and columns
  "rule",
  "rule-fine",
  "rule-dotted",
  // type, and plain areas of ink and of paper; type in the role "paper" is white on solid
  "text",
  "text-quiet",
  "solid",
  "paper",
] as const;

/**
 * What a mark is for. `core/drawing/ink.ts` alone turns a role into weight, dash and colour, so that a drawing prints
 * in colour and in black alike.
 */
export type Role = (typeof PLAIN_ROLES)[number] | `wire-${WireState}` | `glyph-${WireState}`;

/** Every role there is. */
export const ROLES: readonly Role[] = [
  ...PLAIN_ROLES,
  ...WIRE_STATES.map((state): Role => `wire-${state}`),
  ...WIRE_STATES.map((state): Role => `glyph-${state}`),
];

/** Which end of a text its spot marks. */
export type Anchor = "start" | "middle" | "end";
/** Weights of the shipped font. */
export type Weight = 400 | 600 | 700;

/** Straight lines from spot to spot. */
export interface LineMark {
  readonly mark: "line";
  readonly spots: readonly Spot[];
  readonly role: Role;
  readonly closed?: boolean;
  readonly filled?: boolean;
  readonly of?: string;
}

/** A circle round a spot. */
export interface CircleMark {
  readonly mark: "circle";
  readonly at: Spot;
  readonly radius: GridUnits;
  readonly role: Role;
  readonly filled?: boolean;
  readonly of?: string;
}

/** Part of a circle, angles in degrees clockwise from three o'clock, drawn clockwise. */
export interface ArcMark {
  readonly mark: "arc";
  readonly at: Spot;
  readonly radius: GridUnits;
  readonly from: number;
  readonly to: number;
  readonly role: Role;
  readonly of?: string;
}

/** A box with its top left at `at`. */
export interface BoxMark {
  readonly mark: "box";
  readonly at: Spot;
  readonly width: GridUnits;
  readonly height: GridUnits;
  readonly corner?: GridUnits;
  readonly role: Role;
  readonly filled?: boolean;
  readonly of?: string;
}

/** One line of type; `at` is on its baseline, `turn` in degrees clockwise about `at`. */
export interface TextMark {
  readonly mark: "text";
  readonly at: Spot;
  readonly text: string;
  readonly points: number;
  readonly weight: Weight;
  readonly anchor: Anchor;
  readonly role: Role;
  readonly turn?: number;
  readonly of?: string;
}

/** A sample of an insulation with its top left at `at`: base, and the stripes along its middle. */
export interface SwatchMark {
  readonly mark: "swatch";
  readonly at: Spot;
  readonly width: GridUnits;
  readonly height: GridUnits;
  readonly base: ColourName;
  readonly stripes: readonly ColourName[];
  readonly of?: string;
}

/**
 * One thing drawn. Painters (SVG, PDF, canvas) know nothing else. Lengths are grid units, type sizes are points on
 * paper. `of` names the part, wire or point that the mark belongs to.
 */
export type Mark = LineMark | CircleMark | ArcMark | BoxMark | TextMark | SwatchMark;

/** A drawing: marks in the order they are painted, the size of the sheet, and a title for the reader of the file. */
export interface Drawing {
  readonly width: GridUnits;
  readonly height: GridUnits;
  readonly marks: readonly Mark[];
  readonly title?: string;
}
