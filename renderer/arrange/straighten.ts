import type { ArrangeAnswer, ArrangeQuestion } from "../../core/circuit/arrange.ts";
import { type Attempt, attemptFrom, refinedAttempt } from "../../core/edit/arranging.ts";
import type { Bench } from "../../core/edit/bench.ts";
import { type Trouble, troubleIn } from "../workers/trouble.ts";

/** A layout on its way to be straightened and measured, or the best attempt on its way to be bettered. */
export interface StraightenAsked {
  readonly bench: Bench;
  readonly question: ArrangeQuestion;
  readonly from: { readonly answer: ArrangeAnswer | null } | { readonly best: Attempt | null };
}

/** The attempt on its way back, or the program's own error. */
export interface Straightened extends Partial<Trouble> {
  readonly attempt: Attempt | null;
}

self.onmessage = ({ data }: MessageEvent<StraightenAsked>) => {
  self.postMessage(straightened(data));
};

function straightened({ bench, question, from }: StraightenAsked): Straightened {
  try {
    if ("best" in from) return { attempt: refinedAttempt(bench, question, from.best) };
    return { attempt: attemptFrom(bench, question, from.answer) };
  } catch (error) {
    return { attempt: null, ...troubleIn(error) };
  }
}
