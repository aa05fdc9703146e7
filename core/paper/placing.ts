import type { Millimetres, Share } from "../base/units.ts";
import type { Palette } from "../drawing/ink.ts";
import type { Drawing } from "../drawing/mark.ts";
import { millimetresOf } from "../drawing/scale.ts";

/** Papers a sheet can be printed on: short and long edge in millimetres (ISO 216; ANSI sizes A and B). */
export const PAPERS = {
  a4: [210, 297],
  a3: [297, 420],
  letter: [215.9, 279.4],
  tabloid: [279.4, 431.8],
} as const satisfies Readonly<Record<string, readonly [Millimetres, Millimetres]>>;
export type Paper = keyof typeof PAPERS;

/** True where the word names a paper. */
export function isPaper(word: string): word is Paper {
  return Object.hasOwn(PAPERS, word);
}

/** Paper is light: colours or black alone. */
export type PrintPalette = Exclude<Palette, "dark">;

/** Where a drawing lands on its page: millimetres from the page's top left corner, and its size against the drawing. */
export interface Placing {
  readonly pageWidth: Millimetres;
  readonly pageHeight: Millimetres;
  readonly left: Millimetres;
  readonly top: Millimetres;
  readonly scale: Share;
}

/** Kept free on every side, since most printers cannot reach the edge. */
const LEAST_MARGIN: Millimetres = 8;
/** Kept free at the top of an upright page for the clip of a board, where the drawing leaves the room. */
const CLIP_MARGIN: Millimetres = 15;

/**
 * The place of a drawing on this paper, upright or across as its own shape is. Never enlarged; made smaller only where
 * it would come nearer than 8 mm to an edge.
 */
export function placingOn(drawing: Drawing, paper: Paper): Placing {
  const [short, long] = PAPERS[paper];
  const width = millimetresOf(drawing.width);
  const height = millimetresOf(drawing.height);
  const across = width > height;
  const [pageWidth, pageHeight] = across ? [long, short] : [short, long];
  const scale = Math.min(1, (pageWidth - 2 * LEAST_MARGIN) / width, (pageHeight - 2 * LEAST_MARGIN) / height);
  const spare = pageHeight - height * scale;
  const hasRoomForClip = !across && spare >= CLIP_MARGIN + LEAST_MARGIN;
  return {
    pageWidth,
    pageHeight,
    left: (pageWidth - width * scale) / 2,
    top: hasRoomForClip ? CLIP_MARGIN : spare / 2,
    scale,
  };
}
