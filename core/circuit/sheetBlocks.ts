import type { WireState } from "../base/states.ts";
import type { GridUnits } from "../base/units.ts";
import { GLYPH_WIDTH, glyphMarks } from "../drawing/glyph.ts";
import type { Mark } from "../drawing/mark.ts";
import type { WireColour } from "../trade/colours.ts";
import { depth, hangs, rise, type SheetType, widthOf, words } from "./sheetType.ts";

/** Something small to be set whole: its size, and its marks once its top left is known. */
export interface Block {
  readonly width: GridUnits;
  readonly height: GridUnits;
  draw(left: GridUnits, top: GridUnits): readonly Mark[];
}

/** Usual gap between blocks side by side. */
export const BESIDE: GridUnits = 0.3;
/** Least distance of stacked blocks, and as a share of the lower of the two. */
const BELOW: GridUnits = 0.4;
const BELOW_SHARE = 0.46;

type Align = "left" | "right" | "middle";
const SHARES: Readonly<Record<Align, number>> = { left: 0, right: 1, middle: 0.5 };

/** Blocks side by side, their middles in line. */
export function row(blocks: readonly Block[], gap: GridUnits = BESIDE): Block {
  const height = Math.max(...blocks.map((block) => block.height));
  return {
    width: blocks.reduce((sum, block) => sum + block.width, gap * (blocks.length - 1)),
    height,
    draw(left, top) {
      let x = left;
      return blocks.flatMap((block) => {
        const marks = block.draw(x, top + (height - block.height) / 2);
        x += block.width + gap;
        return marks;
      });
    },
  };
}

/** Blocks one below the other, in line at the left, at the right or in the middle. */
export function stack(blocks: readonly Block[], align: Align): Block {
  const width = Math.max(...blocks.map((block) => block.width));
  const tops: GridUnits[] = [];
  let height = 0;
  blocks.forEach((block, index) => {
    if (index > 0) height += gapBetween(blocks[index - 1]!, block);
    tops.push(height);
    height += block.height;
  });
  return {
    width,
    height,
    draw: (left, top) =>
      blocks.flatMap((block, index) => block.draw(left + (width - block.width) * SHARES[align], top + tops[index]!)),
  };
}

/** Lines of type keep apart in proportion to their size. */
function gapBetween(one: Block, other: Block): GridUnits {
  return Math.max(BELOW, BELOW_SHARE * Math.min(one.height, other.height));
}

/** A block in the room of another one, in line at one side of it. */
export function padded(block: Block, { width, height }: Pick<Block, "width" | "height">, align: Align): Block {
  const wide = Math.max(width, block.width);
  return {
    width: wide,
    height: Math.max(height, block.height),
    draw: (left, top) => block.draw(left + (wide - block.width) * SHARES[align], top),
  };
}

/** A line of type; letters below the line are within its height. */
export function wordBlock(text: string, type: SheetType, of?: string): Block {
  const up = rise(type.points);
  const down = hangs(text) ? depth(type.points) : 0;
  return {
    width: widthOf(text, type),
    height: up + down,
    draw: (left, top) => [words(text, { x: left, y: top + up }, type, "start", of)],
  };
}

/** Room for the bar under the glyph of a wire that is always fed; as much is left above, to keep the glyph in line. */
const BAR: GridUnits = 0.4;

/** The glyph of a state, larger where `growth` says so, with its bar where the wire is always fed. */
export function glyphBlock(state: WireState, alwaysFed: boolean, growth: number, of?: string): Block {
  const width = GLYPH_WIDTH * growth;
  const height = width + (alwaysFed ? 2 * BAR : 0);
  return {
    width,
    height,
    draw: (left, top) =>
      glyphMarks(
        state,
        { x: left + width / 2, y: top + height / 2 },
        { width, alwaysFed, ...(of !== undefined && { of }) },
      ),
  };
}

/** Width and height of the swatch on a circuit sheet, 6 x 2.5 mm. */
const SWATCH = { width: 2.4, height: 1 };

/** The sample of an insulation, larger where `growth` says so. */
export function swatchBlock({ base, stripes }: WireColour, growth: number, of?: string): Block {
  const size = { width: SWATCH.width * growth, height: SWATCH.height * growth };
  return {
    ...size,
    draw: (x, y) => [{ mark: "swatch", at: { x, y }, ...size, base, stripes, ...(of !== undefined && { of }) }],
  };
}
