import { type Outcome, ok, refuse } from "../base/outcome.ts";
import { lotsFrom } from "../base/seed.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import type { Question } from "./question.ts";
import { questionPool } from "./questionPool.ts";
import { conditionsOf, isExact, PLAIN_EVERY, questionsFor, shuffled, worded } from "./questions.ts";

/** Conditions that are tried for one question. */
const MOST_TRIED = 8;

/**
 * One question more, made in one condition by lot, so that it is there at once; unlike those whose texts are known. Null where
 * nothing new can be asked. The same seed gives the same one.
 */
export function oneQuestion(circuit: Circuit, seed: number, known: ReadonlySet<string>): Question | null {
  for (const condition of shuffled(conditionsOf(circuit), lotsFrom(seed)).slice(0, MOST_TRIED)) {
    const some = questionsFor(circuit, { seed, count: PLAIN_EVERY, conditions: [condition] });
    // They take turns by number, as those of one choice do: every fifth is plain.
    const found = [...some.slice(seed % PLAIN_EVERY), ...some].find(({ text }) => !known.has(text));
    if (found) return found;
  }
  return null;
}

/**
 * The question about one point in a condition: its state, its volts to battery negative, or how a lamp burns from there.
 * Refuses `questions-none` where that cannot be asked there, as of a clash, or where a meter would change what it reads.
 */
export function questionAt(
  circuit: Circuit,
  condition: Condition,
  { point, asks }: Pick<Question["asked"], "point" | "asks">,
): Outcome<Question> {
  const drafts = questionPool(circuit, [condition], []).filter(({ asked }) => {
    if (asked.asks !== asks || asked.point !== point) return false;
    return asked.asks === "state" || (asked.asks === "volts" ? asked.black : asked.lampTo) === "battery -";
  });
  const draft = drafts.find((each) => isExact(circuit, [], each));
  return draft ? ok(worded(circuit, draft, [])) : refuse("questions-none");
}
