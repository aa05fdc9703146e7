import { type Outcome, refuse } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import { OBSERVED_WORDS, type Observed } from "../../live/judge.ts";
import type { Bench } from "../bench.ts";
import type { Change } from "../change.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf, without } from "../editOf.ts";

/**
 * Notes what a function check was seen to do; "not-tried" takes the note back. A complaint that works is none any more.
 * Refuses `no-check`, `observed-word` and `already-so`.
 */
export function observeCheck(bench: Bench, check: string, word: Observed): Outcome<Edit> {
  const found = bench.circuit.checks.find(({ id }) => id === check);
  if (!found) return refuse("no-check", { check });
  if (!OBSERVED_WORDS.includes(word)) return refuse("observed-word", { word, words: OBSERVED_WORDS.join(", ") });
  if ((bench.observed[check] ?? "not-tried") === word) return alreadySo(`"${found.label}" noted`);
  const others = without(bench.observed, check);
  const observed = word === "not-tried" ? others : { ...others, [check]: word };
  const isOver = bench.complaint === check && word === "works";
  const changes: readonly Change[] = [
    { change: "bench", field: "observed", value: observed },
    ...(isOver ? [{ change: "bench", field: "complaint", value: null } as const] : []),
  ];
  return editOf(bench, EDIT_NAMES.observeCheck(found.label, word), changes);
}
