import type { WireState } from "../../core/base/states.ts";
import type { Volts } from "../../core/base/units.ts";

/** The glyph of each state in a terminal: the shapes of the drawing, as characters. */
export const GLYPHS: Readonly<Record<WireState, string>> = {
  powered: "▲",
  "powered-through-load": "△",
  grounded: "▼",
  "grounded-through-load": "▽",
  between: "◆",
  floating: "○",
  clash: "✕",
  undecided: "?",
};

/** A state in words: "powered through a load". */
export function stateWords(state: WireState): string {
  return state.replace("-through-load", " through a load");
}

/** Volts with two decimals below 1 V and one from there up; the range where they are undecided; a dash where there are none. */
export function voltsText(volts: Volts | null, range: readonly [Volts, Volts] | null = null): string {
  if (volts === null) return range === null ? "–" : `${range[0].toFixed(1)} to ${range[1].toFixed(1)} V`;
  const shown = Math.abs(volts) < 0.005 ? 0 : volts;
  return `${shown.toFixed(Math.abs(shown) < 0.995 ? 2 : 1)} V`;
}

/** Columns aligned to the widest cell of each; numbers (columns named in `right`) to the right. */
export function aligned(
  rows: readonly (readonly string[])[],
  right: readonly number[] = [],
  gap = "  ",
): readonly string[] {
  const widths = rows.reduce<number[]>(
    (most, row) => row.map((cell, column) => Math.max(cell.length, most[column] ?? 0)),
    [],
  );
  return rows.map((row) =>
    row
      .map((cell, column) => (right.includes(column) ? cell.padStart(widths[column]!) : cell.padEnd(widths[column]!)))
      .join(gap)
      .trimEnd(),
  );
}

/** Breaks a text into lines of at most `width` characters, the first after `first`, the others after `indent`. */
export function wrapped(text: string, width: number, first = "", indent = first): string {
  const lines: string[] = [];
  let line = first;
  let isFresh = true;
  for (const word of text.split(" ")) {
    if (!isFresh && line.length + word.length + 1 > width) {
      lines.push(line);
      line = indent + word;
    } else line += isFresh ? word : ` ${word}`;
    isFresh = false;
  }
  return [...lines, line].join("\n");
}

/** "1 part", "2 parts". */
export function count(number: number, what: string): string {
  return `${number} ${what}${number === 1 ? "" : "s"}`;
}
