import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Volts } from "../base/units.ts";
import type { Shows } from "./reading.ts";
import { type Act, type Expected, type Instrument, isAct, isBySense } from "./step.ts";

/** What a value is typed for. */
export interface ReadFor {
  readonly instrument: Instrument;
  readonly nominalVolts: Volts;
  /** What a good circuit shows; null where that is not known. */
  readonly expect: Expected | null;
}

const LAMP_WORDS = ["bright", "dim", "dark"] as const;
/** Words for "just as a good circuit". */
const FINE = ["ok", "good", "right", "fine"];
/** More than this times nominal is no reading of the circuit: charging is a fifth over, a slip of the unit far more. */
export const MOST_OVER = 2;

/**
 * Reads what was typed for one setting: `11.9`, `11.9 V`, `25 mV`, `dim`, `dim 7.2`, `blown`, `clicks`, or `ok` for what a
 * good circuit shows. A bare number has the row's unit. Refuses `reading-empty`, `reading-value`, `reading-unit` and
 * `reading-high`.
 */
export function readValue(given: string, about: ReadFor): Outcome<Shows> {
  const typed = given.trim();
  const text = typed.toLowerCase().replaceAll("\u2212", "-");
  if (text === "") return refuse("reading-empty");
  const { expect, instrument } = about;
  if (FINE.includes(text) && instrument === "like relay") return ok({ volts: null, word: "helps" });
  if (FINE.includes(text) && expect) return ok(goodValue(expect, instrument));
  if (isBySense(instrument)) return sensed(text, about);
  const [, word = "", rest = ""] = /^([a-z]*)\s*(.*)$/.exec(text) ?? [];
  const lamp = LAMP_WORDS.find((each) => each === word);
  if (word !== "" && (!lamp || (expect !== null && expect.lamp === null)))
    return refuse("reading-value", { typed, words: wordsFor(about) });
  if (rest === "") return ok({ volts: null, word: lamp ?? null });
  const volts = voltsOf(rest, typed, about);
  return volts.ok ? ok({ volts: volts.value, word: lamp ?? null }) : volts;
}

function goodValue({ low, high, unit, lamp, word }: Expected, instrument: Instrument): Shows {
  if (isBySense(instrument)) return { volts: null, word };
  return { volts: ((low + high) / 2) * (unit === "mV" ? 0.001 : 1), word: lamp };
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

function voltsOf(text: string, typed: string, { expect, nominalVolts }: ReadFor): Outcome<Volts> {
  const [, number = "", unit = ""] = /^([-+]?\d*[.,]?\d+)\s*([a-zµΩω]*)$/.exec(text) ?? [];
  const value = Number(number.replace(",", "."));
  if (number === "" || !Number.isFinite(value))
    return refuse("reading-value", { typed, words: "a number such as 11.9" });
  if (!["", "v", "mv"].includes(unit)) return refuse("reading-unit", { typed });
  const isMilli = unit === "mv" || (unit === "" && expect?.unit === "mV");
  const volts = isMilli ? value / 1000 : value;
  if (Math.abs(volts) > MOST_OVER * nominalVolts) return refuse("reading-high", { typed, nominal: nominalVolts });
  return ok(volts);
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
