import type { Volts } from "../base/units.ts";
import { EXPECTED_WORDS } from "../base/words/diagnose.ts";
import type { Expected, Unit } from "../diagnose/step.ts";
import { OPEN_FROM } from "../trade/instruments.ts";

/** A figure as it is printed, with a real minus sign. */
export function minusText(value: number, decimals: number): string {
  const written = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(written) !== 0 ? `−${written}` : written;
}

/** Volts to one decimal. */
export function voltsText(volts: Volts): string {
  return minusText(volts, 1);
}

/** Volts as the position table gives them: one decimal from 1 V up, two below, and plain 0.0 for none. */
export function tableVolts(volts: Volts): string {
  if (Math.abs(volts) < 0.005) return "0.0";
  return minusText(volts, Math.abs(volts) >= 0.995 ? 1 : 2);
}

/** A number without needless zeros: `25`, `7.5`. */
export function plainNumber(value: number): string {
  return String(Number(value.toFixed(2))).replace("-", "−");
}

/** Share of a tenth that is not rounded outward: no meter shows it. */
const HAIR = 0.05;

/** A range from low to high in tenths, rounded outward so that no good reading falls beside it; one figure where both agree. */
export function rangeText(low: number, high: number): string {
  const from = Math.floor(Math.min(low, high) * 10 + HAIR) / 10;
  const to = Math.ceil(Math.max(low, high) * 10 - HAIR) / 10;
  const [one, other] = [minusText(from, 1), minusText(to, 1)];
  return one === other ? one : `${one} – ${other}`;
}

/** The same without blanks round the dash, for small type. */
export function closeRange(low: number, high: number): string {
  return rangeText(low, high).replaceAll(" ", "");
}

/** A unit as it is printed behind a figure. */
export function unitSign(unit: Unit): string {
  return unit === "ohm" ? "Ω" : unit;
}

/** What a good circuit shows in a row: the range without its unit, millivolts whole or in tenths, or the word of a look or a sound. */
export function expectText({ low, high, unit, word }: Expected): string {
  if (word !== null) return EXPECTED_WORDS[word] ?? word;
  if (unit === "ohm" && low >= OPEN_FROM) return "open";
  if (unit !== "mV") return rangeText(low, high);
  const [from, to] = [low, high].map((each) => minusText(each, Number.isInteger(each) ? 0 : 1));
  return from === to ? from! : `${from} – ${to}`;
}
