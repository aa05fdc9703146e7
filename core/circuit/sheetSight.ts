import type { GridUnits, Share } from "../base/units.ts";
import { pointsToGrid } from "../drawing/type.ts";
import { BESIDE } from "./sheetBlocks.ts";
import { FARTHEST, FROM_WORD } from "./sheetRoom.ts";
import { leastPoints, type SheetTypes, sheetTypes } from "./sheetType.ts";

/**
 * How a sheet is seen: printed at a share of its own size, or at a zoom on a screen. Words come out no smaller than can
 * be read; on a screen those that a zoom has no use for are left out.
 */
export interface Sight {
  readonly types: SheetTypes;
  /** On a screen a word that finds no room is left out; on paper it is set where it belongs all the same. */
  readonly isScreen: boolean;
  /** Codes, sizes and names of wires; without them a wire keeps its swatch. */
  readonly hasCodes: boolean;
  /** Swatches and all other words; without them there are only designators, letters of symbols and glyphs of wires. */
  readonly hasWords: boolean;
  /** Labels and settings beside the designator, and swatches; left out where few large words must do. */
  readonly hasLabels: boolean;
  /** Room beside a word: on a screen words grow, and so must what parts them. */
  readonly besideWords: GridUnits;
  /** How far from its part a word that tells its state stands at most. */
  readonly farthestState: GridUnits;
  /** From a state glyph to the volts beside it, and at least from a name to how its part stands. */
  readonly besideGlyph: GridUnits;
  /** How much larger than on paper state glyphs and swatches are. */
  readonly glyphGrowth: number;
  readonly swatchGrowth: number;
  /** How often tags are set anew with those first that found no place for their volts: a screen has no time for it. */
  readonly tagRounds: number;
  /** A size of type in points, grown where it would be too small. */
  grown(points: number): number;
}

/** Least size of type on a screen: 11 pixels, in points at 100 %. */
const LEAST_ON_SCREEN = 8.25;
/** Points of a pixel at 100 %, and pixels of the type that state glyphs go with. */
const PIXEL_POINTS = 0.75;
const GLYPH_PIXELS = 14;
const CODES_FROM: Share = 0.9;
const WORDS_FROM: Share = 0.45;
const BESIDE_WORDS_ZOOMED: GridUnits = 0.3;
/** Farther off at a zoom, a word of state would be taken for that of another part. */
const FARTHEST_STATE: GridUnits = 2.6;
/** Signs keep this much of their size at 100 %. */
const GLYPH_SHARE: Share = 0.8;
const SWATCH_SHARE: Share = 0.7;

/** A sheet printed at this share of its own size. */
export function printedAt(share: Share): Sight {
  return {
    types: sheetTypes(share),
    isScreen: false,
    hasCodes: true,
    hasWords: true,
    hasLabels: true,
    besideWords: FROM_WORD,
    farthestState: FARTHEST,
    besideGlyph: BESIDE,
    glyphGrowth: 1,
    swatchGrowth: 1,
    tagRounds: 5,
    grown: (points) => leastPoints(points, share),
  };
}

/** A sheet on a screen, 1 at 100 %. */
export function zoomedTo(zoom: Share): Sight {
  return {
    types: sheetTypes(zoom, LEAST_ON_SCREEN, zoom < WORDS_FROM),
    isScreen: true,
    hasCodes: zoom >= CODES_FROM,
    hasWords: zoom >= WORDS_FROM,
    hasLabels: true,
    besideWords: zoom < 1 ? BESIDE_WORDS_ZOOMED / zoom : FROM_WORD,
    farthestState: zoom < 1 ? FARTHEST_STATE : FARTHEST,
    besideGlyph: BESIDE,
    glyphGrowth: Math.max(1, GLYPH_SHARE / zoom),
    swatchGrowth: Math.max(1, SWATCH_SHARE / zoom),
    tagRounds: 1,
    grown: (points) => leastPoints(points, zoom, LEAST_ON_SCREEN),
  };
}

/** A sheet on a screen that is read from the back of a room: all words of one height in pixels, whatever the zoom. */
export function farTo(zoom: Share, pixels: number): Sight {
  const glyphGrowth = Math.max(1, pixels / GLYPH_PIXELS / zoom);
  return {
    types: sheetTypes(zoom, pixels * PIXEL_POINTS, true),
    isScreen: true,
    hasCodes: false,
    hasWords: true,
    hasLabels: false,
    besideWords: BESIDE_WORDS_ZOOMED / Math.min(zoom, 1),
    farthestState: pointsToGrid((pixels * PIXEL_POINTS) / zoom),
    besideGlyph: BESIDE * glyphGrowth,
    glyphGrowth,
    swatchGrowth: 1,
    tagRounds: 3,
    grown: (points) => leastPoints(points, zoom, LEAST_ON_SCREEN),
  };
}
