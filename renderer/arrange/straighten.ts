import type { ArrangeAnswer, ArrangeQuestion } from "../../core/circuit/arrange.ts";
import { type Attempt, attemptFrom } from "../../core/edit/arranging.ts";
import type { Bench } from "../../core/edit/bench.ts";

/** A layout on its way to be straightened and measured. */
export interface StraightenAsked {
  readonly bench: Bench;
  readonly question: ArrangeQuestion;
  readonly answer: ArrangeAnswer | null;
}

/** The attempt on its way back. `trouble` tells the program's own error. */
export interface Straightened {
  readonly attempt: Attempt | null;
  readonly trouble?: string;
}

self.onmessage = ({ data }: MessageEvent<StraightenAsked>) => {
  self.postMessage(straightened(data));
};

function straightened({ bench, question, answer }: StraightenAsked): Straightened {
  try {
    return { attempt: attemptFrom(bench, question, answer) };
  } catch (error) {
    return { attempt: null, trouble: error instanceof Error ? error.message : String(error) };
  }
}
