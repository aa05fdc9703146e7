import { type Outcome, ok, refuse } from "./outcome.ts";

/** A unit that amounts are typed in: how it may be written, and whether k, m, M and the like may stand before it. */
interface UnitOf {
  /** Every spelling, with what one of it is in the unit itself. */
  readonly spellings: Readonly<Record<string, number>>;
  readonly takesPrefix: boolean;
}

const UNITS: Readonly<Record<string, UnitOf>> = {
  "": { spellings: {}, takesPrefix: false },
  V: { spellings: { V: 1, volt: 1, volts: 1 }, takesPrefix: true },
  A: { spellings: { A: 1, amp: 1, amps: 1 }, takesPrefix: true },
  W: { spellings: { W: 1, watt: 1, watts: 1 }, takesPrefix: true },
  // The Greek letter and the sign for ohm look alike and are two characters.
  ohm: { spellings: { R: 1, ohm: 1, ohms: 1, "\u03a9": 1, "\u2126": 1 }, takesPrefix: true },
  "%": { spellings: { "%": 1, percent: 1 }, takesPrefix: false },
  degC: { spellings: { C: 1, degC: 1, "\u00b0C": 1 }, takesPrefix: false },
  rpm: { spellings: { rpm: 1, "1/min": 1 }, takesPrefix: false },
  mm2: { spellings: { mm2: 1, "mm\u00b2": 1, qmm: 1 }, takesPrefix: false },
  m: { spellings: { m: 1, cm: 0.01, mm: 0.001, ft: 0.3048, in: 0.0254 }, takesPrefix: false },
  min: { spellings: { min: 1, minutes: 1 }, takesPrefix: false },
};

const PREFIXES: Readonly<Record<string, number>> = {
  u: 1e-6,
  "\u00b5": 1e-6,
  m: 1e-3,
  k: 1e3,
  K: 1e3,
  M: 1e6,
};

/** Digits beyond these are noise of multiplying. */
const DIGITS = 12;

/**
 * The number that a person typed, in this unit: "20A", "20 mA", "1k2", "4R7", "0,75 mm2", "-10 degC", "35 cm"; without a
 * unit it is taken as typed. Refuses `amount-empty`, `amount-spelling`, `amount-unit`, and `amount-comma` where a comma
 * could part thousands as well as decimals.
 */
export function parseAmount(text: string, unit: string): Outcome<number> {
  const typed = text.trim().replace(/^[\u2212\u2013]/, "-");
  if (typed === "") return refuse("amount-empty", { unit });
  const inner = /^([+-]?\d+)([^\d\s.,eE+-])(\d+)\s*(\D*)$/u.exec(typed);
  if (inner) return codeOf(text, unit, inner);
  const shape = /^([+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][+-]?\d+)?)\s*(.*)$/u.exec(typed);
  if (!shape) return refuse("amount-spelling", { text, unit });
  const [, digits = "", tail = ""] = shape;
  if (/^[+-]?[1-9]\d*,\d{3}$/.test(digits)) return refuse("amount-comma", { text });
  const factor = factorOf(tail, unit);
  if (factor === null) return refuse(/^[\d.,]/.test(tail) ? "amount-spelling" : "amount-unit", { text, unit, tail });
  return scaled(text, unit, Number(digits.replace(",", ".")), factor);
}

/** A value as parts are marked: the prefix or the unit stands where the decimal point would, 1k2 or 4R7. */
function codeOf(
  text: string,
  unit: string,
  [, whole, mark = "", decimals, tail = ""]: RegExpExecArray,
): Outcome<number> {
  const factor = factorOf(mark, unit);
  const after = tail === "" ? 1 : spellingOf(tail, unit);
  if (factor === null || after !== 1) return refuse("amount-unit", { text, unit, tail: `${mark}${tail}` });
  return scaled(text, unit, Number(`${whole}.${decimals}`), factor);
}

function scaled(text: string, unit: string, value: number, factor: number): Outcome<number> {
  const amount = Number((value * factor).toPrecision(DIGITS));
  return Number.isFinite(amount) ? ok(amount) : refuse("amount-spelling", { text, unit });
}

/** What a spelled unit, or a prefix with or without it, multiplies by; null where it is of another unit. */
function factorOf(tail: string, unit: string): number | null {
  if (tail === "") return 1;
  const whole = spellingOf(tail, unit);
  if (whole !== null || UNITS[unit]?.takesPrefix !== true) return whole;
  const prefix = Object.hasOwn(PREFIXES, tail[0]!) ? PREFIXES[tail[0]!]! : null;
  if (prefix === null) return null;
  const rest = tail.length === 1 ? 1 : spellingOf(tail.slice(1), unit);
  return rest === null ? null : prefix * rest;
}

/** Letters of one sign keep their case, since M and m differ; whole words need not. */
function spellingOf(word: string, unit: string): number | null {
  const spellings = Object.entries(UNITS[unit]?.spellings ?? {});
  const exact = spellings.find(([spelling]) => spelling === word);
  const loose = spellings.find(([spelling]) => spelling.length > 1 && spelling.toLowerCase() === word.toLowerCase());
  return (exact ?? loose)?.[1] ?? null;
}
