import { join, relative } from "node:path";
import { refuse } from "../../../core/base/outcome.ts";
import type { Circuit, Scene } from "../../../core/circuit/circuit.ts";
import type { Question } from "../../../core/lesson/question.ts";
import { questionsOf } from "../../../core/lesson/questions.ts";
import { questionsIn } from "../../../core/lesson/scene.ts";
import { conditionText } from "../../../core/live/condition.ts";
import { readCircuitFile } from "../../files.ts";
import { ROOT } from "../../root.ts";
import { exerciseFile, samplesIn } from "../../samples.ts";
import { type Console, EXIT, need } from "../console.ts";
import { count, wrapped } from "../rows.ts";
import { answerLines, MOST_WIDTH, questionLines } from "./questions.ts";

const SAMPLES = join(ROOT, "samples");

/** What may be typed of a lesson. */
export interface LessonTyped {
  readonly json?: boolean;
}

/** `lesson [FILE]`: what a class is shown and asked, scene by scene, and the answers; without a file, the lessons there are. */
export async function lesson(console: Console, file: string | undefined, typed: LessonTyped): Promise<number> {
  if (file === undefined) return listed(console, typed);
  const circuit = need(await readCircuitFile(file));
  const { title, scenes } = circuit;
  if (scenes.length === 0) need(refuse("lesson-none", { title }));
  const taught = scenes.map((scene) => ({ scene, questions: questionsOf(circuit, scene) }));
  if (typed.json) {
    const rows = taught.map(({ scene, questions }) => ({ ...scene, questions }));
    console.write(`${JSON.stringify({ title, scenes: rows }, null, 2)}\n`);
    return EXIT.fine;
  }
  const width = Math.min(console.width, MOST_WIDTH);
  console.write(`${title}\n`);
  taught.forEach(({ scene, questions }, index) => {
    console.write(`\n${sceneLines(scene, index + 1, questions, width).join("\n")}\n`);
  });
  for (const line of lostLines(
    circuit,
    taught.flatMap(({ questions }) => questions),
  ))
    console.write(`\n${line}\n`);
  return EXIT.fine;
}

async function listed(console: Console, typed: LessonTyped): Promise<number> {
  const samples = [...(await samplesIn(SAMPLES))].filter(([, { circuit }]) => questionsIn(circuit) > 0);
  const rows = samples.map(([name, { circuit, exercises }]) => ({
    file: here(join(SAMPLES, `${name}.circuit.json`)),
    title: circuit.title,
    scenes: circuit.scenes.length,
    questions: questionsIn(circuit),
    exercises: exercises.map((each) => here(exerciseFile(SAMPLES, each))),
  }));
  if (typed.json) {
    console.write(`${JSON.stringify({ lessons: rows }, null, 2)}\n`);
    return EXIT.fine;
  }
  for (const { file, title, scenes, questions, exercises } of rows) {
    console.write(`${title}: ${count(scenes, "scene")}, ${count(questions, "question")}\n   ${file}\n`);
    for (const each of exercises) console.write(`   ${each}\n`);
  }
  return EXIT.fine;
}

/** A path as it is typed from where the program was started. */
function here(path: string): string {
  return relative(process.cwd(), path);
}

function sceneLines(
  { label, condition, caption = "" }: Scene,
  number: number,
  questions: readonly Question[],
  width: number,
): readonly string[] {
  const set = conditionText(condition);
  return [
    `Scene ${number}: ${label}${set === "" ? "" : ` (${set})`}`,
    ...questions.flatMap((question, index) => [
      ...questionLines(question, index + 1, width),
      ...answerLines(question, index + 1, width),
    ]),
    ...(caption === "" ? [] : [wrapped(caption, width)]),
  ];
}

/** What is to be said where the circuit cannot answer all that its scenes ask. */
function lostLines(circuit: Circuit, asked: readonly Question[]): readonly string[] {
  const lost = questionsIn(circuit) - asked.length;
  return lost === 0 ? [] : [`${count(lost, "question")} cannot be answered by the circuit as it is now.`];
}
