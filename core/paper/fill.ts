import { assert } from "../base/outcome.ts";
import type { Millimetres } from "../base/units.ts";
import type { Block } from "./grid.ts";

/** Rows behind one piece of trim, under a bar; `again` is the bar where the place goes on from an earlier sheet. */
export interface Place {
  readonly bar: Block;
  readonly again: Block;
  readonly rows: readonly Block[];
}

/** What is to be laid out on sheets, and between which heights. */
export interface Filling {
  readonly firstTop: Millimetres;
  readonly laterTop: Millimetres;
  readonly bottom: Millimetres;
  /** At the head of the first sheet and of every later one. */
  readonly first: Block;
  readonly later: Block;
  readonly places: readonly Place[];
  /** After the last row, never split; given the room that is left, at least `endingHeight`. */
  readonly endingHeight: Millimetres;
  ending(room: Millimetres): Block;
}

/** A block in its place on a sheet. */
export interface Laid {
  readonly block: Block;
  readonly top: Millimetres;
  readonly is: "front" | "bar" | "row" | "ending";
}

/** Rows that must follow a bar on its sheet, where the place has as many. */
const ROWS_AFTER_BAR = 2;

/**
 * Cuts rows into sheets by adding heights. A block never splits; a bar is followed by two rows or all it has; a place that
 * goes on repeats its bar. Only a bar and a row that no sheet holds together are parted. Throws where one block alone is
 * higher than a sheet.
 */
export function fillSheets(filling: Filling): readonly (readonly Laid[])[] {
  const { firstTop, laterTop, bottom, first, later, places } = filling;
  const sheets: Laid[][] = [[{ block: first, top: firstTop, is: "front" }]];
  let y = firstTop + first.height;
  const lay = (block: Block, is: Laid["is"]): void => {
    assert(y + block.height <= bottom + 1e-6, "a block is higher than a sheet");
    sheets.at(-1)!.push({ block, top: y, is });
    y += block.height;
  };
  const turn = (): void => {
    sheets.push([{ block: later, top: laterTop, is: "front" }]);
    y = laterTop + later.height;
  };
  const fits = (height: Millimetres): boolean => y + height <= bottom + 1e-6;
  const emptyRoom = bottom - laterTop - later.height;
  for (const { bar, again, rows } of places) {
    if (!fits(barNeeds(bar, rows, emptyRoom))) turn();
    lay(bar, "bar");
    for (const row of rows) {
      if (!fits(row.height)) {
        turn();
        if (fits(again.height + row.height)) lay(again, "bar");
      }
      lay(row, "row");
    }
  }
  if (!fits(filling.endingHeight)) turn();
  lay(filling.ending(bottom - y), "ending");
  return sheets;
}

/** Height of a bar with the rows that must follow it; with fewer only where so many never go on a sheet. */
function barNeeds(bar: Block, rows: readonly Block[], emptyRoom: Millimetres): Millimetres {
  const [first, second] = rows.slice(0, ROWS_AFTER_BAR).map((row) => row.height);
  const one = bar.height + (first ?? 0);
  const two = one + (second ?? 0);
  return [two, one].find((height) => height <= emptyRoom + 1e-6) ?? bar.height;
}
