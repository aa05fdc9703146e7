import type { Millimetres } from "../base/units.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import { inCell } from "./cell.ts";
import type { Block } from "./grid.ts";
import { leadParagraph } from "./lines.ts";
import { SHEET } from "./page.ts";
import { TYPE } from "./sizes.ts";

const ABOVE: Millimetres = 1.4;

/** "Before row 1", under the cautions of the first sheet: what to do and to heed; nothing where there is nothing. */
export function beforeBlock(before: readonly string[]): Block {
  if (before.length === 0) return { height: 0, draw: () => ({ marks: [], cells: [] }) };
  const words = leadParagraph(WORDS.beforeRows, before.join(" "), TYPE.body, SHEET.width);
  const height = ABOVE + words.height;
  return {
    height,
    draw: (top) =>
      inCell("before", { x: 0, y: top + ABOVE, width: SHEET.width, height: words.height }, words.at(0, top + ABOVE)),
  };
}
