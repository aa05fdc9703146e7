import type { Millimetres } from "../base/units.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import { gridUnitsOf } from "../drawing/scale.ts";
import { type Drawn, together } from "./cell.ts";
import { footOf } from "./foot.ts";
import { firstHead, laterHead } from "./head.ts";
import { type CodedSheet, type Facts, SHEET, type SheetNumber } from "./page.ts";
import { sheetCode } from "./sheetCode.ts";

const BLANK: SheetNumber = { code: "", sheet: 1, sheets: 1 };

/** Where the body of the first sheet and of later ones begins, given what their heads must hold. */
export function bodyTops(facts: Facts): { readonly first: Millimetres; readonly later: Millimetres } {
  return { first: firstHead(facts, BLANK).height, later: laterHead(facts, BLANK).height };
}

/**
 * The sheets of a print: head and foot round each body, numbered, with the code of what they show. The date and the
 * paper do not change the code.
 */
export function sheetsOf(facts: Facts, bodies: readonly Drawn[]): readonly CodedSheet[] {
  const code = sheetCode([{ ...facts, date: "" }, bodies.map((body) => body.marks)]);
  return bodies.map((body, i) => {
    const number = { code, sheet: i + 1, sheets: bodies.length };
    const head = i === 0 ? firstHead(facts, number) : laterHead(facts, number);
    const { marks, cells } = together(head.draw(0), body, footOf(facts, number));
    return {
      width: gridUnitsOf(SHEET.width),
      height: gridUnitsOf(SHEET.height),
      title: `${facts.title}, ${WORDS.footSheet} ${WORDS.sheetOf(number.sheet, number.sheets)}`,
      code,
      marks,
      cells,
    };
  });
}
