import type { Refusal } from "../../core/base/outcome.ts";
import { sentence } from "../../core/base/words.ts";
import type { Notice, Open } from "../state/state.ts";

/** That the last changes to a bench are not kept, and why; null is a host that does not answer. */
export function notKept({ desk }: Open, refusal: Refusal | null, canBeCopied: boolean): Omit<Notice, "id"> {
  const words = refusal
    ? sentence(refusal)
    : "The program behind this page does not answer; it is asked again until it does.";
  const title = `Your last changes to ${desk.bench.circuit.title} are not kept yet.`;
  const notice = { title, words, isError: true, isUntilKept: true };
  if (!canBeCopied) return notice;
  return { ...notice, offer: { words: "Keep mine as a copy", action: { do: "keep-as-copy" } } };
}

/** That a bench that was put away went into the library beside the circuit it was made from. */
export function keptAsCopy({ desk }: Open): Omit<Notice, "id"> {
  return {
    title: `Your ${desk.bench.circuit.title} is kept as a copy.`,
    words: "The one in the library was changed or deleted in another window.",
    isError: false,
  };
}
