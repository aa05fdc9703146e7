import { WIRE_STATES, type WireState } from "../base/states.ts";
import type { GridUnits } from "../base/units.ts";
import { SHEET_WORDS, STATE_WORDS } from "../base/words/sheet.ts";
import { chassisMarks, chevronMarks, GLYPH_WIDTH, glyphMarks } from "../drawing/glyph.ts";
import type { Mark } from "../drawing/mark.ts";
import { gridUnitsOf } from "../drawing/scale.ts";
import { line, terminalRing } from "../drawing/shapes.ts";
import { colourNamed } from "../trade/colourNames.ts";
import type { SheetSetup } from "./sheetSetup.ts";
import { leastPoints, rise, type SheetType, widthOf, words } from "./sheetType.ts";

/** One entry: its sample drawn from the left on the middle line, the room that takes, and its words. */
interface Entry {
  readonly width: GridUnits;
  readonly text: string;
  draw(x: GridUnits, y: GridUnits): readonly Mark[];
}

const SAMPLE: GridUnits = gridUnitsOf(9);
const GAP: GridUnits = 0.45;
const PAD: GridUnits = gridUnitsOf(3);

/** The legend: all eight states with line and glyph, always fed, current, contact now and at rest, chassis, swatch. */
export function legendMarks({ area: { legend } }: SheetSetup, printScale: number): readonly Mark[] {
  const type: SheetType = { points: leastPoints(8.5, printScale), weight: 400, role: "text" };
  const entries = [
    ...WIRE_STATES.map(stateEntry),
    fedEntry(),
    currentEntry(),
    nowEntry(),
    restEntry(),
    chassisEntry(),
    swatchEntry(),
  ];
  const columns = columnsFor(entries, type, legend.right - legend.left - 2 * PAD);
  const rows = Math.ceil(entries.length / columns.length);
  const height = (legend.bottom - legend.top) / (rows + 0.4);
  let left = legend.left + PAD;
  const spare = legend.right - legend.left - 2 * PAD - columns.reduce((sum, width) => sum + width, 0);
  const between = Math.max(0, spare / Math.max(1, columns.length - 1));
  const marks: Mark[] = [line("frame-heavy", legend.left, legend.top, legend.right, legend.top)];
  columns.forEach((width, column) => {
    entries.slice(column * rows, (column + 1) * rows).forEach((entry, row) => {
      const y = legend.top + height * (row + 0.7);
      marks.push(...entry.draw(left, y));
      marks.push(words(entry.text, { x: left + entry.width + GAP, y: y + rise(type.points) / 2 }, type));
    });
    left += width + Math.min(between, 5);
  });
  return marks;
}

/** Widths of as many columns as fit, entries running down each; one column where nothing fits. */
function columnsFor(entries: readonly Entry[], type: SheetType, width: GridUnits): readonly GridUnits[] {
  const wide = (entry: Entry) => entry.width + GAP + widthOf(entry.text, type);
  for (let count = entries.length; count > 1; count--) {
    const rows = Math.ceil(entries.length / count);
    if (rows < 3 || Math.ceil(entries.length / rows) !== count) continue;
    const columns = Array.from({ length: count }, (_, column) =>
      Math.max(...entries.slice(column * rows, (column + 1) * rows).map(wide)),
    );
    if (columns.reduce((sum, each) => sum + each, GAP * (count - 1)) <= width) return columns;
  }
  return [width];
}

function stateEntry(state: WireState): Entry {
  return {
    width: SAMPLE + GAP + GLYPH_WIDTH,
    text: STATE_WORDS[state],
    draw: (x, y) => [
      line(`wire-${state}`, x, y, x + SAMPLE, y),
      ...glyphMarks(state, { x: x + SAMPLE + GAP + GLYPH_WIDTH / 2, y }),
    ],
  };
}

function fedEntry(): Entry {
  return {
    width: SAMPLE + GAP + GLYPH_WIDTH,
    text: SHEET_WORDS.alwaysFed,
    draw: (x, y) => [
      line("wire-powered", x, y, x + SAMPLE, y),
      ...glyphMarks("powered", { x: x + SAMPLE + GAP + GLYPH_WIDTH / 2, y: y - 0.2 }, { alwaysFed: true }),
    ],
  };
}

function currentEntry(): Entry {
  return {
    width: SAMPLE,
    text: SHEET_WORDS.current,
    draw: (x, y) => [
      line("wire-powered", x, y, x + SAMPLE, y),
      ...chevronMarks({ x: x + SAMPLE / 2, y }, 0, "powered"),
    ],
  };
}

function nowEntry(): Entry {
  return {
    width: SAMPLE,
    text: SHEET_WORDS.contactNow,
    draw: (x, y) => [
      line("contact-now", x + 0.3, y, x + SAMPLE - 0.3, y),
      terminalRing(x + 0.3, y),
      terminalRing(x + SAMPLE - 0.3, y),
    ],
  };
}

function restEntry(): Entry {
  return { width: SAMPLE, text: SHEET_WORDS.contactRest, draw: (x, y) => [line("contact-rest", x, y, x + SAMPLE, y)] };
}

function chassisEntry(): Entry {
  return { width: SAMPLE, text: SHEET_WORDS.chassis, draw: (x, y) => chassisMarks({ x: x + SAMPLE / 2, y: y - 0.4 }) };
}

function swatchEntry(): Entry {
  return {
    width: SAMPLE,
    text: SHEET_WORDS.swatch,
    draw: (x, y) => [
      {
        mark: "swatch",
        at: { x, y: y - 0.5 },
        width: 2.4,
        height: 1,
        base: colourNamed("red"),
        stripes: [colourNamed("white")],
      },
    ],
  };
}
