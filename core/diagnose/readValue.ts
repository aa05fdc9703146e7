import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Volts } from "../base/units.ts";
import { OPEN_FROM } from "../trade/instruments.ts";
import { type Shows, showing } from "./reading.ts";
import { type Act, type Expected, type Instrument, isAct, isBySense } from "./step.ts";

/** What a value is typed for. */
export interface ReadFor {
  readonly instrument: Instrument;
  readonly nominalVolts: Volts;
  /** What a good circuit shows; null where that is not known. */
  readonly expect: Expected | null;
}

const LAMP_WORDS = ["bright", "dim", "dark"] as const;
/** What a meter on ohms shows where it shows no figure. */
const OPEN = ["open", "ol", "o.l", "o.l."];
/** Words for "just as a good circuit". */
const FINE = ["ok", "good", "right", "fine"];
/** More than this times nominal is no reading of the circuit: charging is a fifth over, a slip of the unit far more. */
export const MOST_OVER = 2;

/**
 * Reads what was typed for one setting: `11.9`, `11.9 V`, `25 mV`, `1.2 ohm`, `open`, `0.4 A`, `dim`, `dim 7.2`, `blown`,
 * `clicks`, or `ok` for what a good circuit shows. A bare number has the row's unit. Refuses `reading-empty`,
 * `reading-value`, `reading-unit`, `reading-negative` and `reading-high`.
 */
export function readValue(given: string, about: ReadFor): Outcome<Shows> {
  const typed = given.trim();
  const text = typed.toLowerCase().replaceAll("\u2212", "-");
  if (text === "") return refuse("reading-empty");
  const { expect, instrument } = about;
  if (FINE.includes(text) && instrument === "like relay") return ok({ volts: null, word: "helps" });
  if (FINE.includes(text) && expect) return ok(goodValue(expect, instrument));
  if (isBySense(instrument)) return sensed(text, about);
  if (instrument === "meter ohms" && OPEN.includes(text)) return ok(showing(instrument, OPEN_FROM));
  const [, word = "", rest = ""] = /^([a-z]*)\s*(.*)$/.exec(text) ?? [];
  const lamp = LAMP_WORDS.find((each) => each === word);
  if (word !== "" && (!lamp || (expect !== null && expect.lamp === null)))
    return refuse("reading-value", { typed, words: wordsFor(about) });
  if (rest === "") return ok({ volts: null, word: lamp ?? null });
  const figure = figureIn(rest, typed, about);
  return figure.ok ? ok(showing(instrument, figure.value, lamp ?? null)) : figure;
}

function goodValue({ low, high, unit, lamp, word }: Expected, instrument: Instrument): Shows {
  if (isBySense(instrument)) return { volts: null, word };
  return showing(instrument, ((low + high) / 2) * (unit === "mV" ? 0.001 : 1), lamp);
}

function sensed(text: string, about: ReadFor): Outcome<Shows> {
  if (about.instrument === "scan tool") return ok({ volts: null, word: text });
  if (isAct(about.instrument)) {
    const word = wordsOfAct(about.instrument).find((each) => each === text || each.startsWith(`${text} `));
    return word ? ok({ volts: null, word }) : refuse("reading-value", { typed: text, words: wordsFor(about) });
  }
  const known = about.instrument === "listen" ? ["clicks", "silent"] : ["whole", "blown", "as set"];
  const isFuse = about.expect === null || about.expect.word === "whole";
  const isKnown = about.instrument === "listen" || isFuse ? known.includes(text) : text !== "";
  return isKnown ? ok({ volts: null, word: text }) : refuse("reading-value", { typed: text, words: wordsFor(about) });
}

/** Units that each instrument is read in, and how many volts, ohms or amps one of them is. */
const UNITS = {
  volts: { v: 1, mv: 0.001 },
  ohms: { ohm: 1, ohms: 1, ω: 1, kohm: 1e3, kω: 1e3, mohm: 1e6, mω: 1e6 },
  amps: { a: 1, ma: 0.001 },
} as const satisfies Readonly<Record<string, Readonly<Record<string, number>>>>;

function unitsOf(instrument: Instrument): keyof typeof UNITS {
  if (instrument === "meter ohms") return "ohms";
  return instrument === "clamp" ? "amps" : "volts";
}

/** The unit that a value was typed with; null where it has none that is read here. */
export function unitTyped(typed: string): keyof typeof UNITS | null {
  const text = typed.trim().toLowerCase();
  if (OPEN.includes(text)) return "ohms";
  const unit = /\d\s*([a-zµω]+)$/.exec(text)?.[1] ?? "";
  const found = Object.entries(UNITS).find(([, units]) => unit in units)?.[0];
  return (found as keyof typeof UNITS | undefined) ?? null;
}

/** A number with its unit or without, in volts, ohms or amps; more than can be is refused. */
function figureIn(text: string, typed: string, { instrument, expect, nominalVolts }: ReadFor): Outcome<number> {
  const [, number = "", unit = ""] = /^([-+]?(?:\d+(?:[.,]\d+)?|[.,]\d+))\s*([a-zµω]*)$/.exec(text) ?? [];
  const value = Number(number.replace(",", "."));
  if (number === "" || !Number.isFinite(value))
    return refuse("reading-value", { typed, words: "a number such as 11.9" });
  const kind = unitsOf(instrument);
  const units: Readonly<Record<string, number>> = UNITS[kind];
  const times = unit === "" ? (expect?.unit === "mV" ? units.mv : 1) : units[unit];
  if (times === undefined) return refuse("reading-unit", { typed, unit: kind });
  const figure = value * times;
  if (kind === "volts" && Math.abs(figure) > MOST_OVER * nominalVolts)
    return refuse("reading-high", { typed, nominal: nominalVolts });
  if (kind === "ohms") return figure < 0 ? refuse("reading-negative", { typed }) : ok(Math.min(figure, OPEN_FROM));
  // Which way round the clamp was held, nobody notes.
  return ok(kind === "amps" ? Math.abs(figure) : figure);
}

/** What can be seen after an act. */
export function wordsOfAct(act: Act): readonly string[] {
  return act === "like relay" ? ["helps", "no change"] : ["works", "weak", "dead", "melts the fuse"];
}

function wordsFor({ instrument, expect }: ReadFor): string {
  if (isAct(instrument))
    return wordsOfAct(instrument)
      .join(", ")
      .replace(/, ([^,]*)$/, " or $1");
  if (instrument === "listen") return "clicks or silent";
  if (instrument === "look" && expect?.word === "whole") return "whole or blown";
  if (instrument === "look" && expect?.word === "sound") return "sound, loose, corroded, or a place such as 3 out";
  if (instrument === "look") return "as set, or the position it stands in";
  return expect?.lamp === null ? "a number such as 11.9" : "bright, dim or dark, or a number such as 11.9";
}
