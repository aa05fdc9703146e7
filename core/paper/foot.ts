import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import { type Drawn, inCell, ruled, stroke, together } from "./cell.ts";
import { type Runs, runs, runsWidth } from "./lines.ts";
import { type Facts, FOOT, SHEET, type SheetNumber } from "./page.ts";
import { TYPE } from "./sizes.ts";

/** The foot of a sheet: program and code, a hint, and which sheet it is. Later sheets say where the cautions stand. */
export function footOf(facts: Facts, { code, sheet, sheets }: SheetNumber): Drawn {
  const y = SHEET.height - FOOT.height;
  const box = { x: 0, y, width: SHEET.width, height: FOOT.height };
  const left: Runs = [
    [`${WORDS.program} · ${WORDS.footCode} `, TYPE.small],
    [code, TYPE.smallBold],
  ];
  const where: Runs =
    sheet === 1
      ? []
      : [
          [WORDS.cautionsOnFirst, TYPE.smallBold],
          [" · ", TYPE.small],
        ];
  const middle = [...where, ...facts.hint];
  const right: Runs = [
    [`${WORDS.footSheet} `, TYPE.small],
    [WORDS.sheetOf(sheet, sheets), TYPE.smallBold],
  ];
  const top = y + 0.9;
  const marks = [
    ...runs(...left).at(0, top),
    ...runs(...middle).at((SHEET.width - runsWidth(middle)) / 2, top),
    ...runs(...right).at(SHEET.width - runsWidth(right), top),
  ];
  return together(ruled(stroke("rule-fine", 0, y, SHEET.width, y)), inCell("foot", box, marks));
}
