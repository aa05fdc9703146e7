import { assert } from "../base/outcome.ts";
import type { Millimetres } from "../base/units.ts";
import type { Block } from "./grid.ts";

/** As many positions as go side by side: their heads, a row for each pin, and what stands under the rows. */
export interface TablePart {
  readonly head: Block;
  readonly rows: readonly Block[];
  readonly end: Block;
}

/** What is to be cut into sheets, and between which heights. */
export interface TableCut {
  /** Once, at the head of the first sheet. */
  readonly front: Block;
  readonly parts: readonly TablePart[];
  readonly firstTop: Millimetres;
  readonly laterTop: Millimetres;
  readonly bottom: Millimetres;
}

/** A block in its place on a sheet. */
export interface LaidBlock {
  readonly block: Block;
  readonly top: Millimetres;
}

/**
 * The parts of a table cut into sheets, each sheet with the heads of its columns and what stands under them. A row never
 * splits. Throws where one row with its head is higher than a sheet.
 */
export function cutTable({ front, parts, firstTop, laterTop, bottom }: TableCut): readonly (readonly LaidBlock[])[] {
  const sheets: LaidBlock[][] = [[{ block: front, top: firstTop }]];
  let y = firstTop + front.height;
  let isFresh = true;
  const lay = (block: Block): void => {
    sheets.at(-1)!.push({ block, top: y });
    y += block.height;
  };
  const turn = (): void => {
    sheets.push([]);
    y = laterTop;
    isFresh = true;
  };
  for (const { head, rows, end } of parts) {
    let left = rows;
    do {
      if (!isFresh) turn();
      let count = fitting(left, bottom - y - head.height - end.height);
      if (count === 0 && left.length > 0 && sheets.length === 1) {
        turn();
        count = fitting(left, bottom - y - head.height - end.height);
      }
      assert(count > 0 || left.length === 0, "a row of a table is higher than a sheet");
      for (const block of [head, ...left.slice(0, count), end]) lay(block);
      left = left.slice(count);
      isFresh = false;
    } while (left.length > 0);
  }
  return sheets;
}

/** How many rows fit, from the first on. */
function fitting(rows: readonly Block[], room: Millimetres): number {
  let height = 0;
  let count = 0;
  for (const row of rows) {
    height += row.height;
    if (height > room + 1e-6) break;
    count++;
  }
  return count;
}
