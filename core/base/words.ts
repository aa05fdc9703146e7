import type { Refusal } from "./outcome.ts";
import { CIRCUIT_WORDS } from "./words/circuit.ts";
import { DIAGNOSE_WORDS } from "./words/diagnose.ts";
import { EDIT_WORDS } from "./words/edit.ts";
import { EXERCISE_WORDS } from "./words/exercise.ts";
import { FILE_WORDS } from "./words/file.ts";
import { GRADE_REFUSALS } from "./words/grade.ts";
import { KEY_WORDS } from "./words/keys.ts";
import { LIBRARY_WORDS } from "./words/library.ts";
import { LIVE_WORDS } from "./words/live.ts";
import { PROBLEM_WORDS } from "./words/problem.ts";
import { QUESTION_REFUSALS } from "./words/question.ts";
import { TERMINAL_WORDS } from "./words/terminal.ts";
import { TRADE_WORDS } from "./words/trade.ts";
import { WIGGLE_REFUSALS } from "./words/wiggle.ts";

/** Code to sentence; `{name}` stands for the thing of that name in the refusal. */
export type Words = Readonly<Record<string, string>>;

/** Every sentence of the program by its code. A room that brings codes adds its own file under `words/`. */
export const WORDS: readonly Words[] = [
  FILE_WORDS,
  CIRCUIT_WORDS,
  PROBLEM_WORDS,
  LIVE_WORDS,
  TERMINAL_WORDS,
  LIBRARY_WORDS,
  TRADE_WORDS,
  EDIT_WORDS,
  KEY_WORDS,
  DIAGNOSE_WORDS,
  WIGGLE_REFUSALS,
  EXERCISE_WORDS,
  GRADE_REFUSALS,
  QUESTION_REFUSALS,
];

/**
 * The sentence of a refusal, with the place in the file first where it names one. A code without words gives the code
 * and what it concerns.
 */
export function sentence(refusal: Refusal): string {
  const { path, line, column } = refusal.about;
  if (line !== undefined) return `Line ${line}, column ${column}: ${plain(refusal)}`;
  return path === undefined ? plain(refusal) : `At ${path}: ${plain(refusal)}`;
}

function plain(refusal: Refusal): string {
  const template = WORDS.find((words) => Object.hasOwn(words, refusal.code))?.[refusal.code];
  if (template === undefined) {
    const about = Object.entries(refusal.about).map(([name, value]) => `${name} ${value}`);
    return about.length === 0 ? `${refusal.code}.` : `${refusal.code}: ${about.join(", ")}.`;
  }
  return template.replace(/\{(\w+)\}/g, (whole, name: string) =>
    Object.hasOwn(refusal.about, name) ? String(refusal.about[name]) : whole,
  );
}
