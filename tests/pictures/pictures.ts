import { PALETTES } from "../../core/drawing/ink.ts";
import type { Drawing } from "../../core/drawing/mark.ts";
import { svgOf } from "../../core/drawing/svg.ts";
import { circuitSheets } from "../../core/paper/circuitSheets.ts";
import { LESSON_NAMES, SAMPLE_NAMES, sample } from "../samples/onTheBench.ts";
import { specimen } from "./specimen.ts";
import { symbols } from "./symbols.ts";

/** A drawing that the tests hold to the line: the name of its file under `golden/`, and the SVG as it is now. */
export interface Picture {
  readonly file: string;
  readonly svg: () => string;
}

const INKS: readonly Picture[] = PALETTES.map((palette) => ({
  file: `specimen-${palette}.svg`,
  svg: () => svgOf(specimen(), { palette }),
}));

/** Every symbol in both looks, upright and turned, in black as the plainest printer has it. */
const SYMBOLS: readonly Picture[] = (["iec", "na"] as const).flatMap((look) =>
  ([0, 90] as const).map((turn) => ({ file: `symbols-${look}-${turn}.svg`, svg: () => inBlack(symbols(look, turn)) })),
);

/** Every page of the samples as its sheet is printed at rest, in black. */
const SHEETS: readonly Picture[] = [...SAMPLE_NAMES, ...LESSON_NAMES].flatMap((name) =>
  sample(name).pages.map(({ id }) => ({ file: `${name}-${id}.svg`, svg: () => inBlack(sheetOfSample(name, id)) })),
);

/** Every golden picture. `npm run shapes` writes them anew; look at each one before keeping it. */
export const PICTURES: readonly Picture[] = [...INKS, ...SYMBOLS, ...SHEETS];

function inBlack(drawing: Drawing): string {
  return svgOf(drawing, { palette: "black" });
}

function sheetOfSample(name: string, page: string): Drawing {
  const circuit = sample(name);
  const sheets = circuitSheets({ circuit, page, condition: {}, faults: [], look: "iec", paper: "a3" });
  if (!sheets.ok) throw new Error(`refused: ${sheets.refusal.code}`);
  return sheets.value[0]!;
}
