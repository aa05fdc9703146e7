import ELK from "elkjs/lib/elk.bundled.js";
import { attemptFrom, refinedAttempt } from "../../core/edit/arranging.ts";
import type { Drafting } from "../../renderer/arrange/arrange.ts";
import type { ElkGraph } from "../../renderer/arrange/elkGraph.ts";

/** What holds of a layout holds of a hasty one: a share of the tries keeps the test short. */
const EFFORT = 0.2;

/** The layout library and the straightener in this thread. */
export function draftingHere(): Drafting {
  const elk = new ELK();
  return {
    layOut: (graph) => elk.layout(graph as never) as unknown as Promise<ElkGraph>,
    attempt: async (bench, question, answer) => attemptFrom(bench, question, answer, EFFORT),
    refine: async (bench, question, best) => refinedAttempt(bench, question, best, EFFORT),
    end: () => undefined,
  };
}
