import { type Outcome, ok, refuse } from "../base/outcome.ts";
import { GRADE_WORDS as WORDS } from "../base/words/grade.ts";
import type { Grade } from "./grade.ts";
import type { Marked } from "./gradeTable.ts";

/** A task of a school's list, and the exercises, by title, any of which shows that a learner can do it. */
export interface Task {
  readonly task: string;
  readonly exercises: readonly string[];
}

/** How far a learner is with a task: done with a right verdict that is proven as far as it can be. */
export type Progress = keyof typeof WORDS.progress;

/**
 * Reads a school's task list, one task a line: `Voltage drop on the ground side: Horns; Rear lamps`. Lines that begin with # are
 * left out. Refuses `tasks-line` with its number, and `tasks-none`.
 */
export function readTasks(text: string): Outcome<readonly Task[]> {
  const tasks: Task[] = [];
  for (const [index, line] of text.split(/\r?\n/).entries()) {
    if (line.trim() === "" || line.startsWith("#")) continue;
    // The task itself may have a colon in it.
    const [, task = "", list = ""] = /^(.+):([^:]+)$/.exec(line) ?? [];
    const exercises = list.split(";").flatMap((each) => (each.trim() === "" ? [] : [each.trim()]));
    if (task.trim() === "" || exercises.length === 0) return refuse("tasks-line", { number: index + 1 });
    tasks.push({ task: task.trim(), exercises });
  }
  return tasks.length === 0 ? refuse("tasks-none") : ok(tasks);
}

/** What one hand-in says of what a learner can do: all of it that is worth keeping. */
export interface Mark {
  readonly learner: string;
  /** Title of the exercise. */
  readonly exercise: string;
  /** Whether the verdict was right and proven as far as it can be. */
  readonly isMastered: boolean;
}

/** The marks of hand-ins that were graded. */
export function marksOf(marked: readonly Marked[]): readonly Mark[] {
  return marked.flatMap(({ learner, exercise, grade }) =>
    grade ? [{ learner, exercise, isMastered: isMastered(grade) }] : [],
  );
}

function isMastered({ is, proof }: Grade): boolean {
  return is === "right" && proof !== null && proof.is !== "not proven";
}

/** How far one learner is with a task. */
export function progressOf({ exercises }: Task, marks: readonly Mark[], learner: string): Progress {
  const own = marks.filter((each) => each.learner === learner && exercises.includes(each.exercise));
  if (own.some((mark) => mark.isMastered)) return "done";
  return own.length > 0 ? "tried" : "none";
}

/** How far one learner is with the whole list. */
export interface TaskRow {
  readonly learner: string;
  readonly done: readonly string[];
  readonly tried: readonly string[];
}

/** How far each learner is with the list, by name. */
export function taskRows(tasks: readonly Task[], marks: readonly Mark[]): readonly TaskRow[] {
  return learnersIn(marks).map((learner) => {
    const own = (wanted: Progress) =>
      tasks.flatMap((task) => (progressOf(task, marks, learner) === wanted ? [task.task] : []));
    return { learner, done: own("done"), tried: own("tried") };
  });
}

/** Who has a mark, by name. */
export function learnersIn(marks: readonly Mark[]): readonly string[] {
  return [...new Set(marks.map(({ learner }) => learner))].sort();
}

/** The task list of a class as cells: one row for each learner, one column for each task. */
export function taskTable(tasks: readonly Task[], marks: readonly Mark[]): readonly (readonly string[])[] {
  return [
    [WORDS.heads[0], ...tasks.map(({ task }) => task)],
    ...learnersIn(marks).map((learner) => [
      learner,
      ...tasks.map((task) => WORDS.progress[progressOf(task, marks, learner)]),
    ]),
  ];
}
