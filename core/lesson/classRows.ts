import { capital } from "../base/capital.ts";
import { figure } from "../base/figure.ts";
import { GRADE_WORDS as WORDS } from "../base/words/grade.ts";
import { sentence } from "../base/words.ts";
import { percent } from "../diagnose/progressWords.ts";
import type { Grade } from "./grade.ts";
import { type Marked, resultWords } from "./gradeTable.ts";

/** One hand-in as a printed table has it: words only, so that it can be sent to whatever prints it. */
export interface ClassRow {
  readonly learner: string;
  readonly exercise: string;
  /** What came out, and below it what was named and what was missing; both empty where nothing was graded. */
  readonly result: string;
  readonly named: readonly string[];
  readonly minutes: readonly string[];
  readonly readings: readonly string[];
  /** First wrong turn; why it was not graded. */
  readonly remark: string;
}

/** The hand-ins of a class as rows of words, in the order given. */
export function classRows(marked: readonly Marked[]): readonly ClassRow[] {
  return marked.map(({ learner, exercise, grade, refusal }) => ({
    learner,
    exercise,
    ...(grade ? gradedWords(grade) : NOTHING),
    ...(refusal && { remark: sentence(refusal) }),
  }));
}

const NOTHING = { result: "", named: [], minutes: [], readings: [], remark: "" } as const;

function gradedWords(grade: Grade): Omit<ClassRow, "learner" | "exercise"> {
  const SAY = WORDS.sheet;
  const { verdict, proof, minutes, plannersMinutes, hints, readings, wasted, wrongTurn } = grade;
  const missing = proof?.missing;
  return {
    result: capital(resultWords(grade)),
    named: [
      ...(verdict === null ? [] : [verdict]),
      ...(missing ? [SAY.others(percent(proof.others), WORDS.missing(missing.row, missing.other))] : []),
    ],
    minutes: [
      SAY.minutes(figure(minutes, 1)),
      ...(plannersMinutes === null ? [] : [SAY.ofMinutes(figure(plannersMinutes, 1))]),
      ...(hints === 0 ? [] : [SAY.hints(hints)]),
    ],
    readings: [String(readings), ...(wasted.length === 0 ? [] : [SAY.told(wasted.join(", "))])],
    remark: wrongTurn ? WORDS.turn(wrongTurn.move, figure(wrongTurn.dearer, 1), wrongTurn.better) : "",
  };
}
