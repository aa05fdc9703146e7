import type { Minutes, Share } from "../base/units.ts";
import type { Repair } from "./repairs.ts";
import type { Step, Suspect, Window } from "./step.ts";

/** Where an outcome sends the reader: to a row by its number, or to a verdict by its letter. */
export type Goes = { readonly row: number } | { readonly verdict: string };

/** One line of a row's last column: what was read, between which limits, and where to go. */
export interface BranchLine {
  readonly word: string;
  /** One for each setting, as they are printed. */
  readonly windows: readonly Window[];
  readonly share: Share;
  readonly goes: Goes;
}

/** A row of a branch sheet: the first line that fits holds. */
export interface BranchRow {
  readonly step: Step;
  readonly lines: readonly BranchLine[];
}

/** A leaf: what is wrong, or what is left that no row of the sheet parts. */
export interface BranchVerdict {
  readonly letter: string;
  readonly repairs: readonly Repair[];
  readonly share: Share;
}

/** A decision table for a complaint: start at row 1. */
export interface Branches {
  readonly complaint: string;
  /** What to do and to heed before the first row, in sentences. */
  readonly before: readonly string[];
  readonly rows: readonly BranchRow[];
  readonly verdicts: readonly BranchVerdict[];
  /** Minutes that are expected from row 1 to a verdict. */
  readonly minutes: Minutes;
  readonly suspects: readonly Suspect[];
}
