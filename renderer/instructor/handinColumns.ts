import type { Grade } from "../../core/lesson/grade.ts";
import type { HandinMarked } from "./deskQuestion.ts";

/** Columns of the table of hand-ins, in order. */
export const COLUMNS = ["learner", "exercise", "result", "minutes", "readings", "wasted", "turn"] as const;
export type Column = (typeof COLUMNS)[number];

/** What a column is called. */
export const COLUMN_TITLES: Readonly<Record<Column, string>> = {
  learner: "Learner",
  exercise: "Exercise",
  result: "Result",
  minutes: "Minutes",
  readings: "Readings",
  wasted: "Told nothing",
  turn: "First wrong turn",
};

/** What a row of the table is: the name of its file, and what came out. */
interface Row {
  readonly name: string;
  readonly marked: HandinMarked | null;
}

/** Results from best to worst. */
function rankOf({ is, proof }: Grade): number {
  if (is !== "right") return { open: 5, wrong: 4, alike: 3 }[is];
  return proof ? { proven: 0, "as far as can be": 1, "not proven": 2 }[proof.is] : 2;
}

/** What a hand-in is sorted by; null where it has nothing in that column. */
function sortedOn({ name, marked }: Row, by: Column): string | number | null {
  if (by === "learner") return (marked?.learner ?? name).toLowerCase();
  if (by === "exercise") return marked?.exercise.toLowerCase() || null;
  const grade = marked?.grade;
  if (!grade) return null;
  switch (by) {
    case "result":
      return rankOf(grade);
    case "minutes":
      return grade.minutes;
    case "readings":
      return grade.readings;
    case "wasted":
      return grade.wasted.length;
    case "turn":
      return grade.wrongTurn?.move ?? null;
  }
}

/** Hand-ins by a column, up or down; those with nothing in it come last either way, and equals stay as they were. */
export function sortedBy<T extends Row>(handins: readonly T[], by: Column, isDown: boolean): readonly T[] {
  const sign = isDown ? -1 : 1;
  return [...handins].sort((one, other) => {
    const [a, b] = [sortedOn(one, by), sortedOn(other, by)];
    if (a === null || b === null) return Number(a === null) - Number(b === null);
    return a === b ? 0 : sign * (a < b ? -1 : 1);
  });
}
