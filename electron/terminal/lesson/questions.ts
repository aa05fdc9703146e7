import { refuse } from "../../../core/base/outcome.ts";
import { QUESTION_WORDS as WORDS } from "../../../core/base/words/question.ts";
import { mayBeProbed } from "../../../core/diagnose/scope.ts";
import { plantOf } from "../../../core/lesson/plant.ts";
import type { Choice, Question } from "../../../core/lesson/question.ts";
import { questionsFor } from "../../../core/lesson/questions.ts";
import { readCircuitFile } from "../../files.ts";
import { type Console, EXIT, need } from "../console.ts";
import { conditionOf } from "../given.ts";
import { wrapped } from "../rows.ts";
import { wholeOf } from "./given.ts";

/** Questions that are made at once at most. */
const MOST = 200;
/** Longest line that reads well, in columns. */
export const MOST_WIDTH = 110;

/** What may be typed of questions. */
export interface QuestionsTyped {
  readonly seed: string;
  readonly count: string;
  readonly in?: string;
  readonly fault?: readonly string[];
  readonly json?: boolean;
}

/** `questions FILE`: the questions with their choices, then the answers with what each wrong one shows. */
export async function questions(console: Console, file: string, typed: QuestionsTyped): Promise<number> {
  const circuit = need(mayBeProbed(need(await readCircuitFile(file))));
  const count = wholeOf("--count", typed.count);
  if (count < 1 || count > MOST) need(refuse("questions-count", { typed: typed.count, most: MOST }));
  const made = questionsFor(circuit, {
    seed: wholeOf("--seed", typed.seed),
    count,
    faults: (typed.fault ?? []).map((text) => need(plantOf(circuit, text))),
    ...(typed.in !== undefined && { conditions: [conditionOf(circuit, typed)] }),
  });
  if (typed.json) {
    console.write(`${JSON.stringify({ questions: made }, null, 2)}\n`);
    return EXIT.fine;
  }
  if (made.length === 0) need(refuse("questions-none"));
  const width = Math.min(console.width, MOST_WIDTH);
  console.write(`${circuit.title}\n`);
  for (const [index, question] of made.entries())
    console.write(`\n${questionLines(question, index + 1, width).join("\n")}\n`);
  console.write("\nAnswers\n");
  for (const [index, question] of made.entries())
    console.write(`\n${answerLines(question, index + 1, width).join("\n")}\n`);
  return EXIT.fine;
}

/** A question under its number, and its choices by letter. */
export function questionLines({ text, choices }: Question, number: number, width: number): readonly string[] {
  return [
    wrapped(text, width, `${number}. `, "   "),
    ...choices.map(({ answer }, choice) => `   ${letter(choice)}) ${answer}`),
  ];
}

/** The right choice of a question with its reason, and what each wrong one shows. */
export function answerLines(question: Question, number: number, width: number): readonly string[] {
  const { right, reason } = question;
  return [
    wrapped(`${letter(right)}) ${reason.join(" ")}`, width, `${number}. `, "   "),
    ...ideaLines(question).map((line) => wrapped(line, width, "   ", "      ")),
  ];
}

function letter(choice: number): string {
  return String.fromCharCode("a".charCodeAt(0) + choice);
}

/** What each wrong answer shows that is tagged. */
function ideaLines({ choices }: Question): readonly string[] {
  return choices.flatMap(({ ideas }: Choice, choice) =>
    ideas.length === 0
      ? []
      : [`${letter(choice)}) shows the idea that ${ideas.map((idea) => WORDS.ideas[idea]).join("; or that ")}.`],
  );
}
