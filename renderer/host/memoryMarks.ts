import { ok } from "../../core/base/outcome.ts";
import type { KeptMark } from "../../schemas/calls.ts";

/** Marks of a class, forgotten when the page goes. */
export function memoryMarks() {
  const marks = new Map<string, KeptMark>();
  const all = () => ok({ marks: [...marks.values()] });
  return {
    "marks.list": all,
    "marks.keep": ({ marks: sent }: { readonly marks: readonly KeptMark[] }) => {
      for (const mark of sent) marks.set(mark.id, mark);
      return all();
    },
    "marks.forget": ({ learner }: { readonly learner: string }) => {
      for (const mark of marks.values()) if (mark.learner === learner) marks.delete(mark.id);
      return all();
    },
  };
}
