import type { Refusal } from "../../../core/base/outcome.ts";
import { sentenceOf, type Words } from "../../../core/base/sentence.ts";
import { CIRCUIT_WORDS } from "../../../core/base/words/circuit.ts";
import { DIAGNOSE_WORDS } from "../../../core/base/words/diagnose.ts";
import { EXERCISE_WORDS } from "../../../core/base/words/exercise.ts";
import { FILE_WORDS } from "../../../core/base/words/file.ts";
import { LIVE_WORDS } from "../../../core/base/words/live.ts";

/** Words of what can be refused to a learner: the rest of the program's would make the page too large. */
export const LEARNER_REFUSALS: readonly Words[] = [
  EXERCISE_WORDS,
  LIVE_WORDS,
  CIRCUIT_WORDS,
  DIAGNOSE_WORDS,
  FILE_WORDS,
];

/** The sentence of a refusal. */
export function said(refusal: Refusal): string {
  return sentenceOf(LEARNER_REFUSALS, refusal);
}
