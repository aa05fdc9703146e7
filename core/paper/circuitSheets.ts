import { type Outcome, ok } from "../base/outcome.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { sheetOf } from "../circuit/sheet.ts";
import type { Drawing } from "../drawing/mark.ts";
import type { Fault } from "../live/fault.ts";
import { liveOf } from "../live/live.ts";
import type { Look } from "../parts/kind.ts";
import { putInWords } from "./faultWords.ts";
import { type Paper, placingOn } from "./placing.ts";
import { sheetCode } from "./sheetCode.ts";

/** What circuit sheets are printed from. */
export interface CircuitSheetsInput {
  readonly circuit: Circuit;
  /** Id of the one page that is wanted; all of them where null. */
  readonly page: string | null;
  readonly condition: Condition;
  readonly faults: readonly Fault[];
  readonly look: Look;
  readonly paper: Paper;
}

/**
 * Pages of a circuit as sheets in a condition, with type as large as the paper needs it and the faults that are put in named
 * over each. Refuses what `sheetOf` does.
 */
export function circuitSheets(input: CircuitSheetsInput): Outcome<readonly Drawing[]> {
  const { circuit, page, condition, faults, look, paper } = input;
  const live = liveOf(circuit, condition, faults);
  const putIn = putInWords(circuit, faults);
  const sheets: Drawing[] = [];
  for (const [index, { id }] of circuit.pages.entries()) {
    if (page !== null && page !== id) continue;
    const request = { circuit, page: id, live, putIn, look, sheet: [index + 1, circuit.pages.length] } as const;
    const plain = sheetOf(request);
    if (!plain.ok) return plain;
    const printScale = placingOn(plain.value, paper).scale;
    const sheet = sheetOf({ ...request, printScale, code: sheetCode(plain.value.marks) });
    if (!sheet.ok) return sheet;
    sheets.push(sheet.value);
  }
  return ok(sheets);
}
