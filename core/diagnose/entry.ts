import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Volts } from "../base/units.ts";
import { fitsIn, type Reading, readingOf, type Shows } from "./reading.ts";
import { readValue } from "./readValue.ts";
import type { OutcomeOf, Step } from "./step.ts";

/** Values typed for a row: one for each of its settings. */
export interface Entry {
  readonly step: Step;
  readonly shows: readonly Shows[];
}

/**
 * Reads what was typed into the field of the active row: `11.9`, `dim 7.2`, a value for every position of a sweep, `5 = 12.6`
 * for another row, or a whole column back from the sheet, `7=11.9 8=0.1`. Refuses `reading-row`, `reading-column`,
 * `reading-count`, and as `readValue` does.
 */
export function readEntry(
  typed: string,
  active: Step,
  steps: readonly Step[],
  nominalVolts: Volts,
): Outcome<readonly Entry[]> {
  if (!typed.includes("=")) {
    const shows = valuesOf(typed, active, nominalVolts);
    return shows.ok ? ok([{ step: active, shows: shows.value }]) : shows;
  }
  const column = columnIn(typed);
  if (column === null) return refuse("reading-column", { typed });
  const entries: Entry[] = [];
  for (const [row, values] of column) {
    const step = steps.find(({ number }) => number === Number(row));
    if (!step) return refuse("reading-row", { row, rows: steps.length });
    const shows = valuesOf(values, step, nominalVolts);
    if (!shows.ok) return shows;
    entries.push({ step, shows: shows.value });
  }
  return ok(entries);
}

/**
 * The rows of a column and what was typed for each: between two equals signs stand the values of one row and the number of the
 * next. Null where a number is missing. Cut by hand: a pattern that looks for both at once takes ages over a long line of blanks.
 */
function columnIn(typed: string): readonly (readonly [row: string, values: string])[] | null {
  const pieces = typed.split("=").map((piece) => piece.trim());
  const numbers = pieces.slice(0, -1).map(lastDigits);
  const before = pieces[0]!.slice(0, pieces[0]!.length - numbers[0]!.length);
  if (numbers.includes("") || /[^\s,;]/.test(before)) return null;
  return numbers.map((row, at) => {
    const piece = pieces[at + 1]!;
    return [row, piece.slice(0, piece.length - (numbers[at + 1]?.length ?? 0)).trim()];
  });
}

/** The digits that a text ends with. */
function lastDigits(text: string): string {
  let from = text.length;
  while (from > 0 && /\d/.test(text[from - 1]!)) from--;
  return text.slice(from);
}

function valuesOf(typed: string, step: Step, nominalVolts: Volts): Outcome<readonly Shows[]> {
  const { settings, instrument } = step;
  const texts = settings.length === 1 ? [typed] : sweepTexts(typed, settings.length);
  if (texts.length !== settings.length) return refuse("reading-count", { count: settings.length, typed: texts.length });
  const shows: Shows[] = [];
  for (const [index, text] of texts.entries()) {
    const value = readValue(text, { instrument, nominalVolts, expect: settings[index]!.expect });
    if (!value.ok) return value;
    shows.push(value.value);
  }
  return ok(shows);
}

/** Values of a sweep, parted by blanks or semicolons; one word alone, such as "ok", stands for all. */
export function sweepTexts(typed: string, count: number): readonly string[] {
  const texts = typed
    .replace(/(\d)\s+(m?v)\b/gi, "$1$2")
    .split(/[\s;]+/)
    .filter((text) => text !== "");
  return texts.length === 1 && /^[a-z]+$/i.test(texts[0]!) ? Array.from({ length: count }, () => texts[0]!) : texts;
}

/** The readings of an entry, taken at a time in ISO 8601 or at none. */
export function readingsOf({ step, shows }: Entry, time: string | null): readonly Reading[] {
  const { point, black, instrument, lampTo, settings } = step;
  return settings.map(({ condition }, index) => ({
    ...readingOf({ red: point, black, instrument, lampTo, condition }, shows[index]!),
    time,
  }));
}

/** The outcome that an entry falls in, or null where it lies between what any suspect would show. */
export function outcomeOf({ step, shows }: Entry): OutcomeOf | null {
  return step.outcomes.find(({ windows }) => fitsIn(windows, shows)) ?? null;
}
