import { basename } from "node:path";
import { type Outcome, refuse } from "../../../core/base/outcome.ts";
import { GRADE_WORDS as WORDS } from "../../../core/base/words/grade.ts";
import { sentence } from "../../../core/base/words.ts";
import { percent } from "../../../core/diagnose/progressWords.ts";
import { classRows } from "../../../core/lesson/classRows.ts";
import { gradeTable, type Marked, resultWords } from "../../../core/lesson/gradeTable.ts";
import { marksOf, readTasks, type Task, taskRows, taskTable } from "../../../core/lesson/tasks.ts";
import { classSheets } from "../../../core/paper/classTable.ts";
import { csvOf } from "../../../core/paper/csv.ts";
import { PAPERS, type Paper } from "../../../core/paper/placing.ts";
import type { OpenedByInstructor } from "../../../schemas/exercise.ts";
import { markedFrom, openOneOf } from "../../../schemas/marked.ts";
import { readBytes, writeFileWhole } from "../../files.ts";
import { pdfOf } from "../../print/pdf.ts";
import { type Console, EXIT, need } from "../console.ts";
import { chosen } from "../given.ts";
import { aligned, count } from "../rows.ts";
import { exerciseIn, type PassphraseTyped, passphraseOf } from "./given.ts";

/** What may be typed of a grading. */
export interface GradeTyped extends PassphraseTyped {
  readonly exercise?: readonly string[];
  readonly csv?: string;
  readonly pdf?: string;
  readonly paper: string;
  readonly tasks?: string;
  readonly tasksCsv?: string;
  readonly json?: boolean;
}

/**
 * `grade HANDINS... --exercise FILE`: the table of a class. A hand-in that was edited or is of another exercise stands in it with
 * its reason, and makes it a finding.
 */
export async function grade(console: Console, files: readonly string[], typed: GradeTyped): Promise<number> {
  const passphrase = (await passphraseOf(typed)) ?? need<string>(refuse("passphrase-missing"));
  const paths = typed.exercise ?? need<readonly string[]>(refuse("grade-exercise"));
  const exercises: OpenedByInstructor[] = [];
  for (const path of paths) exercises.push(need(await openOneOf(await exerciseIn(path), passphrase)));
  const tasks = typed.tasks === undefined ? [] : need(await tasksIn(typed.tasks));
  const marked: Marked[] = [];
  for (const file of files) marked.push(await markedOf(file, exercises));
  await written(console, typed.csv, csvOf(gradeTable(marked)));
  if (typed.pdf !== undefined) await written(console, typed.pdf, await classPdf(marked, tasks, typed.paper));
  await written(console, typed.tasksCsv, csvOf(taskTable(tasks, marksOf(marked))));
  if (typed.json) console.write(`${JSON.stringify({ marked }, null, 2)}\n`);
  else for (const line of lines(marked, tasks)) console.write(`${line}\n`);
  return marked.some(({ refusal }) => refusal !== null) ? EXIT.finding : EXIT.fine;
}

async function tasksIn(path: string): Promise<Outcome<readonly Task[]>> {
  const bytes = await readBytes(path);
  return bytes.ok ? readTasks(new TextDecoder().decode(bytes.value)) : bytes;
}

async function classPdf(marked: readonly Marked[], tasks: readonly Task[], paper: string): Promise<Uint8Array> {
  const sheets = classSheets({ rows: classRows(marked), tasks: taskRows(tasks, marksOf(marked)) });
  const size = chosen("--paper", paper, Object.keys(PAPERS) as Paper[]);
  return pdfOf(sheets, { paper: size, palette: "black", title: WORDS.sheet.title, made: new Date() });
}

async function written(console: Console, path: string | undefined, text: string | Uint8Array): Promise<void> {
  if (path === undefined) return;
  need(await writeFileWhole(path, text));
  console.complain(`${path}: written\n`);
}

async function markedOf(path: string, exercises: readonly OpenedByInstructor[]): Promise<Marked> {
  const name = basename(path);
  const bytes = await readBytes(path);
  if (!bytes.ok) return { learner: name, exercise: "", grade: null, refusal: bytes.refusal };
  const { learner, exercise, grade, refusal } = await markedFrom(name, bytes.value, exercises);
  return { learner, exercise, grade, refusal };
}

function lines(marked: readonly Marked[], tasks: readonly Task[]): readonly string[] {
  const progress = tasks.length === 0 ? [] : ["", ...aligned(taskTable(tasks, marksOf(marked)))];
  return [...marked.flatMap(blockOf), ...progress];
}

/** A hand-in on a few lines: who and what came out, then minutes, then what the instructor should talk about. */
function blockOf({ learner, exercise, grade, refusal }: Marked): readonly string[] {
  if (!grade) return [`${learner}: ${refusal ? sentence(refusal) : ""}`];
  const { verdict, proof, minutes, plannersMinutes, readings, hints, wasted, wrongTurn } = grade;
  const others = proof ? `, others ${percent(proof.others)}` : "";
  return [
    `${learner}, ${exercise}: ${resultWords(grade)}${verdict === null ? "" : ` (${verdict}${others})`}`,
    `  ${minutes.toFixed(1)} min${plannersMinutes === null ? "" : `, the probe order ${plannersMinutes.toFixed(1)}`}; ${count(readings, "reading")}${hints === 0 ? "" : `, ${count(hints, "hint")}`}`,
    ...(proof?.missing ? [`  Missing: ${WORDS.missing(proof.missing.row, proof.missing.other)}`] : []),
    ...(wasted.length === 0 ? [] : [`  Told nothing: move ${wasted.join(", ")}`]),
    ...(wrongTurn
      ? [`  First wrong turn: ${WORDS.turn(wrongTurn.move, wrongTurn.dearer.toFixed(1), wrongTurn.better)}`]
      : []),
  ];
}
