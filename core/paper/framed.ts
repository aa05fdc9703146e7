import { outline, ruled, together } from "./cell.ts";
import type { Block } from "./grid.ts";
import { SHEET } from "./page.ts";

/** A block in a frame over the width of the sheet. */
export function framed(block: Block): Block {
  const { height } = block;
  return {
    height,
    draw: (top) => together(block.draw(top), ruled(outline("place", { x: 0, y: top, width: SHEET.width, height }))),
  };
}
