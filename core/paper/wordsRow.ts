import { type Block, gridRow, roomIn } from "./grid.ts";
import { leadParagraph } from "./lines.ts";
import { SHEET } from "./page.ts";
import { TYPE } from "./sizes.ts";

/** A row of words over the width of the sheet, the lead in bold. */
export function wordsRow(lead: string, rest: string): Block {
  const piece = leadParagraph(lead, rest, TYPE.body, roomIn(SHEET.width));
  return gridRow(0, [{ name: "words", width: SHEET.width, piece }]);
}
