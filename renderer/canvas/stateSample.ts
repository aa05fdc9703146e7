import type { WireState } from "../../core/base/states.ts";
import { glyphMarks } from "../../core/drawing/glyph.ts";
import type { Palette } from "../../core/drawing/ink.ts";
import type { Mark } from "../../core/drawing/mark.ts";
import { gridUnitsOf } from "../../core/drawing/scale.ts";
import { svgOf } from "../../core/drawing/svg.ts";

/** Sizes of a sample in millimetres: the glyph, then a short piece of wire. */
const HEIGHT = 4.2;
const LINE = { from: 5.2, to: 15.2 } as const;
/** How much higher the glyph of what is always fed stands over its bar. */
const OVER_BAR = 0.4;

/** The glyph of a state and a short piece of wire in it, as SVG text: a key to the drawing for pages without React. */
export function stateSample(state: WireState, palette: Palette, alwaysFed: boolean): string {
  const [middle, height] = [gridUnitsOf(HEIGHT / 2), gridUnitsOf(HEIGHT)];
  const spot = (x: number) => ({ x: gridUnitsOf(x), y: middle });
  const marks: readonly Mark[] = [
    ...glyphMarks(state, { x: middle, y: alwaysFed ? gridUnitsOf(HEIGHT / 2 - OVER_BAR) : middle }, { alwaysFed }),
    { mark: "line", spots: [spot(LINE.from), spot(LINE.to)], role: `wire-${state}` },
  ];
  return svgOf({ width: gridUnitsOf(LINE.to), height, marks }, { palette, inPage: true, isClear: true });
}
