import { create, type Font } from "fontkit";
import type { Weight } from "../../core/drawing/mark.ts";
import { fontBytes, TYPE_FEATURES } from "../../electron/print/fonts.ts";

export const WEIGHTS: readonly Weight[] = [400, 600, 700];

/** The shipped font of this weight, opened from its package. */
export function openFont(weight: Weight): Font {
  return create(fontBytes(weight));
}

/** Advance width of a character in thousandths of the type size. */
export function advanceOf(font: Font, codePoint: number): number {
  const { advanceWidth } = font.layout(String.fromCodePoint(codePoint), TYPE_FEATURES);
  return Math.round((advanceWidth * 1000) / font.unitsPerEm);
}

/** Latin, Romanian commas, accents by themselves, Greek, Cyrillic; then signs, arrows, mathematics and shapes. */
const BLOCKS: readonly (readonly [number, number])[] = [
  [0x20, 0x7e],
  [0xa0, 0x17f],
  [0x218, 0x21b],
  [0x2c6, 0x2dd],
  [0x384, 0x3ce],
  [0x400, 0x45f],
  [0x2000, 0x2bff],
];

/** The characters of the font that the table covers, ascending. */
export function coveredCodePoints(font: Font): readonly number[] {
  const covered = font.characterSet.filter((code) => BLOCKS.some(([first, last]) => code >= first && code <= last));
  return [...covered].sort((a, b) => a - b);
}

/** Code points as runs of neighbours: first and last of each. */
export function runsOf(codePoints: readonly number[]): readonly (readonly [number, number])[] {
  const runs: [number, number][] = [];
  for (const code of codePoints) {
    const open = runs.at(-1);
    if (open && open[1] === code - 1) open[1] = code;
    else runs.push([code, code]);
  }
  return runs;
}
