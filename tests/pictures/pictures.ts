import { PALETTES } from "../../core/drawing/ink.ts";
import { svgOf } from "../../core/drawing/svg.ts";
import { specimen } from "./specimen.ts";

/** A drawing that the tests hold to the line: the name of its file under `golden/`, and the SVG as it is now. */
export interface Picture {
  readonly file: string;
  readonly svg: () => string;
}

/** Every golden picture. `npm run shapes` writes them anew; look at each one before keeping it. */
export const PICTURES: readonly Picture[] = PALETTES.map((palette) => ({
  file: `specimen-${palette}.svg`,
  svg: () => svgOf(specimen(), { palette }),
}));
