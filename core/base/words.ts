import type { Refusal } from "./outcome.ts";
import { sentenceOf, type Words } from "./sentence.ts";
import { CIRCUIT_WORDS } from "./words/circuit.ts";
import { DAMAGE_WORDS } from "./words/damage.ts";
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

/** Every sentence of the program by its code. A room that brings codes adds its own file under `words/`. */
export const WORDS: readonly Words[] = [
  FILE_WORDS,
  CIRCUIT_WORDS,
  PROBLEM_WORDS,
  LIVE_WORDS,
  TERMINAL_WORDS,
  LIBRARY_WORDS,
  DAMAGE_WORDS,
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
  return sentenceOf(WORDS, refusal);
}
