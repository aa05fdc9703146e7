import type { Share } from "../../core/base/units.ts";
import { dimmedShare, type Palette } from "../../core/drawing/ink.ts";
import type { Mark } from "../../core/drawing/mark.ts";

/** Things drawn in full while all others are dimmed, and the palette that says how far. */
export interface Dimming {
  readonly full: ReadonlySet<string>;
  readonly palette: Palette;
}

/** How much of its ink a mark is laid down with. Dots where wires join belong to none of them, and step back with the others. */
export function inkShare({ of = "" }: Mark, dimming: Dimming | null): Share {
  return dimming === null || dimming.full.has(of) ? 1 : dimmedShare(dimming.palette);
}
