import { EXPECTED_WORDS } from "../../core/base/words/diagnose.ts";
import { SCAN_WORDS } from "../../core/base/words/scan.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { type Entry, outcomeOf, sweepTexts } from "../../core/diagnose/entry.ts";
import { finenessOf } from "../../core/diagnose/evidence.ts";
import { suspectName } from "../../core/diagnose/explain.ts";
import { percent } from "../../core/diagnose/progressWords.ts";
import { figureOf, type Reading, type Shows } from "../../core/diagnose/reading.ts";
import { showsText } from "../../core/diagnose/readingText.ts";
import { type Expected, isAct, isBySense, type Step, type Suspect } from "../../core/diagnose/step.ts";
import { OPEN_FROM } from "../../core/trade/instruments.ts";
import { millivoltsText, rangeText, unitSign } from "./figures.ts";

const MOST_NAMES = 2;

/** What a reading will do, before it is taken: which outcome it is, what that leaves and what it clears. */
export function previewWords(entry: Entry): string {
  const { step } = entry;
  const row = `Step ${step.number}: `;
  const outcome = outcomeOf(entry);
  if (!outcome) return `${row}no suspect shows quite this. It counts, but look at leads and setting again.`;
  const all = step.outcomes.reduce((sum, { leaves }) => sum + leaves.length, 0);
  const cleared = all - outcome.leaves.length;
  const clears = cleared === 0 ? "clears none" : `clears ${cleared}`;
  return `${row}${outcome.word}. Leaves ${namesOf(outcome.leaves)} (${percent(outcome.probability)}), ${clears}.`;
}

/** How far a sweep is typed: "rest 0.02, open 12.1. Still to type: close."; null where no position is missing. */
export function sweepSoFar({ settings }: Step, typed: string): string | null {
  if (settings.length === 1 || typed.includes("=")) return null;
  const texts = sweepTexts(typed, settings.length);
  const names = settings.map(({ position }) => position.replaceAll("-", " "));
  if (texts.length === 0 || texts.length >= names.length) return null;
  const done = texts.map((text, index) => `${names[index]} ${text}`).join(", ");
  return `${done}. Still to type: ${names.slice(texts.length).join(", ")}.`;
}

/** Suspects by what they sit on, the likeliest named: "W14, SP1 and 3 more". */
export function namesOf(suspects: readonly Suspect[]): string {
  const names = [...new Set(suspects.map(suspectName))];
  const more = names.length - MOST_NAMES;
  return `${names.slice(0, MOST_NAMES).join(", ")}${more > 0 ? ` and ${more} more` : ""}`;
}

/** An example in the empty field. */
export function entryHint(step: Step): string {
  if (step.settings.length > 1) return step.settings.map(({ position }) => position.replaceAll("-", " ")).join("   ");
  if (isBySense(step.instrument)) return step.settings[0]?.expect.word ?? "";
  if (step.ohms !== null || step.instrument === "clamp") return "0.4";
  if (step.instrument === "meter ohms") return "1.2 or open";
  return step.lampTo === null ? "11.9" : "bright, dim or dark";
}

/** The unit that a bare number has. */
export function entryUnit({ settings }: Step): string {
  return unitSign(settings[0]?.expect.unit ?? "V");
}

/** Words that are likely to be seen or heard, the good circuit's first; none for what is measured. */
export function likelyWords(step: Step): readonly string[] {
  if (step.settings.length > 1) return [];
  if (step.lampTo !== null) return ["bright", "dim", "dark"];
  if (!isBySense(step.instrument)) return [];
  const seen = step.outcomes.map(({ windows }) => windows[0]?.word ?? "");
  return [...new Set([step.settings[0]?.expect.word ?? "", ...seen])].filter((word) => word !== "");
}

/** A reading's value as it is listed: "11.9 V", "1.2 Ω", "dim 7.2 V", "blown". */
export function valueText(circuit: Circuit, reading: Reading): string {
  return showsText(reading, finenessOf(circuit, reading))
    .replace(/ohm$/, unitSign("ohm"))
    .replace(/(\d)(m?V|k?Ω|A)$/, "$1\u00a0$2");
}

/** What a good circuit shows, with its unit: "12.4–12.8 V", "lamp bright", "whole". */
export function wantedText({ low, high, unit, lamp, word }: Expected): string {
  if (word !== null) return EXPECTED_WORDS[word] ?? word;
  if (lamp !== null) return `lamp ${lamp}`;
  if (unit === "ohm" && low >= OPEN_FROM) return "open";
  return unit === "mV" ? millivoltsText(low, high) : rangeText(low, high, unit);
}

/** Half of the last figure that is read: tenths, or whole millivolts where the range is in whole ones. */
const ROUNDING = { tenths: 0.05, whole: 0.5 } as const;

/** Whether a reading is what a good circuit shows; `scale` is the measured battery over the drawing's: volts and amps follow it. */
export function isAsWanted(shows: Shows, expect: Expected, scale = 1): boolean {
  const { word } = shows;
  const read = figureOf(shows);
  const wantedWord = expect.word ?? (word === null ? null : expect.lamp);
  if (wantedWord !== word) return false;
  if (read === null) return true;
  const asDrawn = expect.unit === "ohm" ? read : read / scale;
  const value = expect.unit === "mV" ? asDrawn * 1000 : asDrawn;
  const isWhole = expect.unit === "mV" && [expect.low, expect.high].every(Number.isInteger);
  const slack = ROUNDING[isWhole ? "whole" : "tenths"];
  return value >= expect.low - slack && value <= expect.high + slack;
}

/** Where the leads were: "to battery −", "lamp from battery +", "by eye". */
export function readingLeads({ black, instrument, lampTo }: Reading): string {
  if (instrument === "look") return "by eye";
  if (instrument === "listen") return "by ear";
  if (instrument === "scan tool") return SCAN_WORDS.bySocket;
  if (isAct(instrument))
    return { "fed direct": "fed direct", "fed loose": "fed off its mechanism", "like relay": "with a like relay" }[
      instrument
    ];
  if (instrument === "clamp") return "clamp round the wire";
  if (lampTo === "black") return `${instrument} in place of the fuse`;
  if (lampTo !== null) return lampTo === "battery +" ? `${instrument} from battery +` : `${instrument} to battery −`;
  const to = `to ${black.replace(" -", " −")}`;
  return instrument === "meter ohms" ? `ohms ${to}` : to;
}

/** The time of day of a reading, as the person's clock says it. */
export function timeText(time: string): string {
  return new Date(time).toLocaleTimeString([], { hour: "2-digit", minute: "2-digit" });
}
