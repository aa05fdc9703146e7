import { MOVE_WORDS as SAY } from "../base/words/learner.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { finenessOf } from "../diagnose/evidence.ts";
import { showsText } from "../diagnose/readingText.ts";
import type { Recorded } from "./move.ts";

/** What the vehicle showed of a move, as a person says it: what was read, what works now, how functions came out. */
export function answerWords(circuit: Circuit, { move, answer }: Pick<Recorded, "move" | "answer">): string {
  const { shows, loads, checks, hint } = answer;
  if (shows) return SAY.shows(showsText(shows, move.do === "probe" ? finenessOf(circuit, move) : "volts"));
  if (hint !== null) return hint;
  const working = loads.filter(({ does }) => does !== "still").map(({ part, does }) => SAY.does(part, does));
  const tried = circuit.checks.flatMap(({ id, label }) => (checks[id] ? [SAY.cameOut(label, checks[id])] : []));
  const seen = loads.length === 0 ? [] : [working.length === 0 ? SAY.nothingWorks : working.join(", ")];
  return [...tried, ...seen].join(". ");
}
