import { figure } from "../base/figure.ts";
import type { Refusal } from "../base/outcome.ts";
import { GRADE_WORDS as WORDS } from "../base/words/grade.ts";
import { sentence } from "../base/words.ts";
import type { Grade } from "./grade.ts";

/** One hand-in of a class: graded, or why it cannot be. */
export interface Marked {
  /** Who handed in; of a file that cannot be read, its name. */
  readonly learner: string;
  /** Title of the exercise; "" where that is not known. */
  readonly exercise: string;
  readonly grade: Grade | null;
  readonly refusal: Refusal | null;
}

/** The result in words: "right, not proven". */
export function resultWords({ is, proof }: Grade): string {
  return is === "right" && proof ? WORDS.right(WORDS.proof[proof.is]) : WORDS.result[is];
}

/** The table of a class as cells under their heads, one row for each hand-in; a number stands as a number. */
export function gradeTable(marked: readonly Marked[]): readonly (readonly (string | number | null)[])[] {
  return [WORDS.heads, ...marked.map(cellsOf)];
}

function cellsOf({ learner, exercise, grade, refusal }: Marked): readonly (string | number | null)[] {
  if (!grade) return [learner, exercise, ...WORDS.heads.slice(3).map(() => null), refusal ? sentence(refusal) : ""];
  const { verdict, proof, minutes, plannersMinutes, readings, wasted, wrongTurn, hints } = grade;
  return [
    learner,
    exercise,
    resultWords(grade),
    verdict,
    proof && Math.round(100 * proof.others),
    proof?.missing ? WORDS.missing(proof.missing.row, proof.missing.other) : null,
    minutes,
    plannersMinutes,
    readings,
    wasted.length === 0 ? null : wasted.join(" "),
    wrongTurn && WORDS.turn(wrongTurn.move, figure(wrongTurn.dearer, 1), wrongTurn.better),
    hints,
    "",
  ];
}
