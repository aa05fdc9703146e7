import type { Millimetres, Volts } from "../base/units.ts";
import type { Drawing } from "../drawing/mark.ts";
import type { Cell } from "./cell.ts";
import type { Runs } from "./lines.ts";

/** The box of a sheet, the same on A4 and Letter. */
export const SHEET: { readonly width: Millimetres; readonly height: Millimetres } = { width: 186, height: 254 };

/** Height of the foot, and the room kept free above it. */
export const FOOT: { readonly height: Millimetres; readonly free: Millimetres } = { height: 4.5, free: 2 };

/** Where the body of every sheet must end. */
export const BODY_BOTTOM: Millimetres = SHEET.height - FOOT.height - FOOT.free;

/** What the head and foot of every sheet of a print say. */
export interface Facts {
  readonly title: string;
  readonly vehicle: string;
  readonly complaint: string;
  /** Title of the circuit with its revision. */
  readonly circuit: string;
  readonly date: string;
  readonly restVolts: Volts;
  readonly nominalVolts: Volts;
  /** What the rows leave unsaid: the words before and the words meant. */
  readonly meaning: readonly [string, string];
  /** The hint in the middle of the foot. */
  readonly hint: Runs;
}

/** Which of the sheets this one is, and the code they share. */
export interface SheetNumber {
  readonly code: string;
  readonly sheet: number;
  readonly sheets: number;
}

/** A printed sheet: a drawing, and the cells that its type must stay within. */
export interface Sheet extends Drawing {
  readonly cells: readonly Cell[];
}

/** A sheet of a print that has a code, which follows from what all its sheets show. */
export interface CodedSheet extends Sheet {
  readonly code: string;
}
