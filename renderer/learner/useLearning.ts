import { useApp } from "../state/AppContext.tsx";
import type { Learning } from "./learning.ts";

/** Something of the exercise on the learner's bench. For components that stand only while there is one. */
export function useLearning<T>(select: (learning: Learning) => T): T {
  return useApp(({ learning }) => {
    if (!learning) throw new Error("broken invariant: a learner's component without an exercise");
    return select(learning);
  });
}
