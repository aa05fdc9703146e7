import ELK from "elkjs/lib/elk.bundled.js";
import { attemptFrom } from "../../core/edit/arranging.ts";
import type { Drafting } from "../../renderer/arrange/arrange.ts";
import type { ElkGraph } from "../../renderer/arrange/elkGraph.ts";

/** The layout library and the straightener in this thread. */
export function draftingHere(): Drafting {
  const elk = new ELK();
  return {
    layOut: (graph) => elk.layout(graph as never) as unknown as Promise<ElkGraph>,
    attempt: async (bench, question, answer) => attemptFrom(bench, question, answer),
    end: () => undefined,
  };
}
