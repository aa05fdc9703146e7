import { EXERCISE_SAYS as SAY } from "../base/words/exercise.ts";
import { probeFor } from "../diagnose/candidates.ts";
import { conditionText } from "../live/condition.ts";
import type { Ground } from "./ground.ts";
import { leadsText } from "./moveText.ts";

/** A row of a ground as a learner would type it, with the conditions it is read in: "probe X5-6 at rest, then with S1=on". */
export function rowText({ rows }: Ground, row: number): string {
  const { candidate } = rows.columns[row]!;
  const conditions = candidate.conditions.map((number) => rows.conditions[number]!);
  return SAY.row(leadsText(probeFor(candidate, conditions[0]!)), conditions.map(conditionText));
}
