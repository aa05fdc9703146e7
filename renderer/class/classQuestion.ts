import { QUESTION_WORDS } from "../../core/base/words/question.ts";
import type { Idea } from "../../core/lesson/ideas.ts";
import { answersOf, type Predict } from "../../core/lesson/predict.ts";
import type { Question } from "../../core/lesson/question.ts";

/** A choice as it stands on the wall. */
export interface ClassChoice {
  readonly answer: string;
  /** What is told once the answer is shown; null before. */
  readonly told: {
    readonly isRight: boolean;
    readonly hands: number;
    /** What somebody takes for true who chooses it: "an open switch has 0 V across it"; empty where that is only wrong. */
    readonly idea: string;
  } | null;
}

/** A question as it stands on the wall. */
export interface ClassQuestion {
  readonly choices: readonly ClassChoice[];
  /** How many have answered so far. */
  readonly answered: number;
  /** Why the right answer is right, in a sentence or two; null before it is shown. */
  readonly reason: string | null;
}

/** What the class sees of a question: nothing of the answer before it is shown. */
export function classQuestion(predict: Predict): ClassQuestion {
  const { question, hands, isRevealed } = predict;
  const choices = question.choices.map(({ answer, ideas }, at): ClassChoice => {
    const told = isRevealed ? { isRight: at === question.right, hands: hands[at] ?? 0, idea: ideaSaid(ideas) } : null;
    return { answer, told };
  });
  return { choices, answered: answersOf(predict), reason: isRevealed ? reasonSaid(question) : null };
}

/** The path of the point, and what speaks against the wrong idea; all between them is the instructor's to tell. */
function reasonSaid({ reason: [, path, ...others] }: Question): string {
  return [path, others.at(-1)].filter((each) => each !== undefined).join(" ");
}

/** The wrong ideas that lead to a choice, in words: "an open switch has 0 V across it". */
export function ideaSaid(ideas: readonly Idea[]): string {
  return ideas.map((idea) => QUESTION_WORDS.ideas[idea]).join("; ");
}
