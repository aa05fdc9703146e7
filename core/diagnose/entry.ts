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
  const pieces = [...typed.matchAll(/(\d+)\s*=\s*([^=]*?)\s*(?=\d+\s*=|$)/g)];
  const rest = pieces.reduce((text, [piece]) => text.replace(piece, ""), typed).replace(/[\s,;]/g, "");
  if (pieces.length === 0 || rest !== "") return refuse("reading-column", { typed });
  const entries: Entry[] = [];
  for (const [, row = "", values = ""] of pieces) {
    const step = steps.find(({ number }) => number === Number(row));
    if (!step) return refuse("reading-row", { row, rows: steps.length });
    const shows = valuesOf(values, step, nominalVolts);
    if (!shows.ok) return shows;
    entries.push({ step, shows: shows.value });
  }
  return ok(entries);
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
