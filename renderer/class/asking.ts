import type { Bench } from "../../core/edit/bench.ts";
import { wiringOf } from "../../core/edit/wiring.ts";
import { oneQuestion } from "../../core/lesson/oneQuestion.ts";
import { type Predict, put } from "../../core/lesson/predict.ts";
import type { Question } from "../../core/lesson/question.ts";
import { questionsOf } from "../../core/lesson/questions.ts";
import type { Open } from "../state/state.ts";
import { type Lesson, playNow } from "./lesson.ts";

/** The lesson with a question that is put to the class; null takes away the one there is. */
export function withQuestion(open: Open, question: Question | null): Open {
  const { lesson } = open;
  const known =
    question === null || lesson.known.includes(question.text) ? lesson.known : [...lesson.known, question.text];
  return withLesson(open, { asked: question && put(question), known });
}

/**
 * The lesson with the next question: one that the scene keeps and that was not asked yet, else one that the circuit asks by
 * itself. Once all were asked, they come again.
 */
export function withNext(open: Open): Open {
  const { seed, known } = open.lesson;
  const circuit = wiringOf(open.desk.bench.circuit);
  const [kept] = keptToAsk(open.desk.bench, open.lesson);
  if (kept) return withQuestion(open, kept);
  const question = oneQuestion(circuit, seed, new Set(known)) ?? oneQuestion(circuit, seed, new Set());
  return withLesson(withQuestion(open, question), { seed: seed + 1 });
}

/** Questions of the scene that the scenes stand at, answered by the circuit as it is now, without those that were asked. */
export function keptToAsk({ circuit, condition }: Bench, { play, known }: Lesson): readonly Question[] {
  const scene = circuit.scenes[playNow(circuit, condition, play).at];
  if (!scene?.questions) return [];
  return questionsOf(wiringOf(circuit), scene).filter(({ text }) => !known.includes(text));
}

/** The lesson with the question that is put changed; as it is where none is. */
export function withAsked(open: Open, change: (predict: Predict) => Predict): Open {
  const { asked } = open.lesson;
  const next = asked && change(asked);
  return next === asked ? open : withLesson(open, { asked: next });
}

function withLesson(open: Open, lesson: Partial<Lesson>): Open {
  return { ...open, lesson: { ...open.lesson, ...lesson } };
}
