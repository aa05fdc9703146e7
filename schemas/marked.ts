import { type Outcome, ok, refuse } from "../core/base/outcome.ts";
import { type Grade, gradeOf } from "../core/lesson/grade.ts";
import type { Marked } from "../core/lesson/gradeTable.ts";
import { type Replay, replayed } from "../core/lesson/replay.ts";
import { type ExerciseFile, type OpenedByInstructor, openForInstructor } from "./exercise.ts";
import { checkedHandin, type HandinFile, readHandin } from "./handin.ts";

/** A hand-in of a class with its route made again; without one where it cannot be graded. */
export interface MarkedRoute extends Marked {
  readonly route: { readonly opened: OpenedByInstructor; readonly replay: Replay } | null;
  /** What tells this hand-in from any other, those of the same learner included; null of a file that cannot be read. */
  readonly id: string | null;
}

/**
 * Grades the hand-in in a file of this name by the exercises that were opened. One that was edited, damaged or is of another
 * exercise comes back with its refusal; `handin-waits` where its exercise is not among them.
 */
export async function markedFrom(
  name: string,
  file: string | Uint8Array,
  exercises: readonly OpenedByInstructor[],
): Promise<MarkedRoute> {
  const read = await readHandin(file);
  if (!read.ok) return { learner: name, exercise: "", grade: null, refusal: read.refusal, route: null, id: null };
  const { learner, exercise, last } = read.value;
  const about = { learner: learner || name, exercise: exercise.title, id: last };
  const graded = await gradedFrom({ ...read.value, learner: about.learner }, exercises);
  return graded.ok
    ? { ...about, ...graded.value, refusal: null }
    : { ...about, grade: null, refusal: graded.refusal, route: null };
}

async function gradedFrom(
  file: HandinFile,
  exercises: readonly OpenedByInstructor[],
): Promise<Outcome<{ readonly grade: Grade; readonly route: NonNullable<MarkedRoute["route"]> }>> {
  const { title, id } = file.exercise;
  const opened = exercises.find((each) => each.id === id) ?? exercises.find(({ exercise }) => exercise.title === title);
  if (!opened) return refuse("handin-waits", { learner: file.learner, title });
  const handin = await checkedHandin(file, opened);
  if (!handin.ok) return handin;
  const replay = replayed(opened.exercise, opened.vehicle, handin.value.route);
  if (!replay.ok) return replay;
  const grade = gradeOf(opened.exercise, opened.hidden, replay.value);
  return ok({ grade, route: { opened, replay: replay.value } });
}

/** Opens an exercise of several for the instructor: a passphrase that does not fit names which one. Refuses as `openForInstructor`. */
export async function openOneOf(file: ExerciseFile, passphrase: string): Promise<Outcome<OpenedByInstructor>> {
  const opened = await openForInstructor(file, passphrase);
  return !opened.ok && opened.refusal.code === "passphrase-wrong"
    ? refuse("passphrase-other", { title: file.exercise.title })
    : opened;
}
