import type { ArrangeAnswer, ArrangeQuestion } from "../../core/circuit/arrange.ts";
import { arrangeQuestion } from "../../core/circuit/arrangeQuestion.ts";
import { type Attempt, bestOf } from "../../core/edit/arranging.ts";
import type { Bench } from "../../core/edit/bench.ts";
import { type ElkGraph, elkAnswer, elkGraph, WAYS } from "./elkGraph.ts";

/** What lays a page out, each in its own thread: the layout library, and what straightens and measures its answers. */
export interface Drafting {
  layOut(graph: ElkGraph): Promise<ElkGraph>;
  attempt(bench: Bench, question: ArrangeQuestion, answer: ArrangeAnswer | null): Promise<Attempt | null>;
  refine(bench: Bench, question: ArrangeQuestion, best: Attempt | null): Promise<Attempt | null>;
  /** Stops both at once; what is under way is never answered. */
  end(): void;
}

/** How many attempts an arrangement has: one from the page as it stands, one for each way, and one to better the best. */
export const ATTEMPTS = WAYS.length + 2;

/**
 * The tidiest of all attempts at arranging these parts of a page; null where none found room. `onAttempt` is told the
 * number of each that begins, from 1. A way that the library cannot take is passed over.
 */
export async function arranged(
  drafting: Drafting,
  { bench, page, parts }: { readonly bench: Bench; readonly page: string; readonly parts: readonly string[] },
  onAttempt: (number: number) => void,
): Promise<Attempt | null> {
  const question = arrangeQuestion(bench.circuit, page, new Set(parts));
  const attempts: (Attempt | null)[] = [];
  onAttempt(1);
  attempts.push(await drafting.attempt(bench, question, null));
  for (const [index, way] of WAYS.entries()) {
    onAttempt(index + 2);
    const laid = await drafting.layOut(elkGraph(question, way)).catch(() => null);
    if (laid) attempts.push(await drafting.attempt(bench, question, elkAnswer(laid)));
  }
  onAttempt(ATTEMPTS);
  return drafting.refine(bench, question, bestOf(attempts.filter((attempt) => attempt !== null)));
}
