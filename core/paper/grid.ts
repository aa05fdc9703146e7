import type { Millimetres } from "../base/units.ts";
import { type Box, type Drawn, inCell, ruled, stroke, together } from "./cell.ts";
import type { Piece } from "./piece.ts";

/** A band across the sheet that is never split: its height, and what it draws with its top at `top`. */
export interface Block {
  readonly height: Millimetres;
  draw(top: Millimetres): Drawn;
}

/** A text that needs more room makes its row higher by steps of this much, never its type smaller. */
const GROWTH: Millimetres = 4;

/** The base height, or as many steps more as the need asks for. */
export function grownTo(base: Millimetres, needed: Millimetres): Millimetres {
  return base + GROWTH * Math.max(0, Math.ceil((needed - base) / GROWTH - 1e-6));
}

/** One cell of a row: what stands in it, how far from its edges, and whether in the middle of its height. */
export interface GridCell {
  readonly name: string;
  readonly width: Millimetres;
  readonly piece: Piece;
  readonly padX?: Millimetres;
  readonly padY?: Millimetres;
  readonly middle?: boolean;
  /** False where no line parts it from the next cell. */
  readonly edge?: boolean;
  /** Marks that need the cell's final box, such as a line at its bottom. */
  readonly over?: { readonly height: Millimetres; at(box: Box): ReturnType<Piece["at"]> };
}

/** Room that a cell leaves at its sides, and above and below what stands in it. */
export const PAD_X: Millimetres = 1.8;
export const PAD_Y: Millimetres = 0.6;

/** What a cell needs: its piece, the room round it, and what stands below. */
function neededBy({ piece, padY = PAD_Y, over }: GridCell): Millimetres {
  return piece.height + 2 * padY + (over?.height ?? 0);
}

/** Cells side by side from x on with fine lines between, all as high as the one that needs most. */
export function gridRow(base: Millimetres, cells: readonly GridCell[], x: Millimetres = 0): Block {
  const height = grownTo(base, Math.max(...cells.map(neededBy)));
  return {
    height,
    draw(top) {
      let left = x;
      const parts = cells.map((each, i): Drawn => {
        const box = { x: left, y: top, width: each.width, height };
        left += each.width;
        const hasEdge = i < cells.length - 1 && each.edge !== false;
        const edge = hasEdge ? [stroke("rule-fine", left, top, left, top + height)] : [];
        return together(cellDrawn(each, box), ruled(...edge));
      });
      return together(...parts);
    },
  };
}

function cellDrawn({ name, piece, padX = PAD_X, padY = PAD_Y, middle = false, over }: GridCell, box: Box): Drawn {
  const room = box.height - (over?.height ?? 0);
  const top = middle ? box.y + (room - piece.height) / 2 : box.y + padY;
  return inCell(name, box, [...piece.at(box.x + padX, top), ...(over?.at(box) ?? [])]);
}

/** Room inside a cell of this width. */
export function roomIn(width: Millimetres, padX: Millimetres = PAD_X): Millimetres {
  return width - 2 * padX;
}

/** Blocks one below the other as one that is never split. */
export function glued(...blocks: readonly Block[]): Block {
  return {
    height: blocks.reduce((sum, block) => sum + block.height, 0),
    draw(top) {
      let y = top;
      const parts = blocks.map((block) => {
        const drawn = block.draw(y);
        y += block.height;
        return drawn;
      });
      return together(...parts);
    },
  };
}

/** Empty room of this height. */
export function gapBlock(height: Millimetres): Block {
  return { height, draw: () => together() };
}
