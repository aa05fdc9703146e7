import { writeFileSync } from "node:fs";
import type { Weight } from "../../core/drawing/mark.ts";
import { advanceOf, coveredCodePoints, openFont, runsOf, WEIGHTS } from "./fontWidths.ts";

/** Writes core/drawing/fontWidths.ts anew from the shipped font: `node tests/pictures/writeFontWidths.ts`, then format. */
const runs = runsOf(coveredCodePoints(openFont(400)));
const table = (weight: Weight): string => {
  const font = openFont(weight);
  const rows = runs.map(([first, last]) => {
    const widths = Array.from({ length: last - first + 1 }, (_, i) => advanceOf(font, first + i));
    return `    [0x${first.toString(16)}, [${widths.join(", ")}]],`;
  });
  return `  ${weight}: [\n${rows.join("\n")}\n  ],`;
};

writeFileSync(
  new URL("../../core/drawing/fontWidths.ts", import.meta.url),
  `import type { Weight } from "./mark.ts";

/** A run of neighbouring characters: the first code point, then the advance width of each one in order. */
export type WidthRun = readonly [number, readonly number[]];

/**
 * Advance widths of IBM Plex Sans Condensed in thousandths of the type size, with slashed zero and without kerning.
 * Written by tests/pictures/writeFontWidths.ts from the font itself; a test holds the two equal.
 */
export const FONT_WIDTHS: Readonly<Record<Weight, readonly WidthRun[]>> = {
${WEIGHTS.map(table).join("\n")}
};
`,
);
