import { EXERCISE_SAYS as SAY } from "../base/words/exercise.ts";
import { probeFor } from "../diagnose/candidates.ts";
import { distinct } from "../diagnose/plan/distinct.ts";
import { tellsOf } from "../diagnose/plan/information.ts";
import { planner } from "../diagnose/plan/next.ts";
import { type Probe, probeText } from "../diagnose/reading.ts";
import { groupsToOpen } from "../diagnose/testPoint.ts";
import type { Ground } from "./ground.ts";
import type { Standing } from "./moveMinutes.ts";
import { rowText } from "./rowText.ts";
import { type Evident, sightOf, standFor } from "./sight.ts";

/**
 * A hint: the row that the planner would read next, from nothing but what the learner knows. Where no row tells more, it says
 * that.
 */
export function hintFor(ground: Ground, now: Standing, evident: Evident): string {
  const row = nextRow(ground, now, evident);
  if (row === null) return SAY.noHint;
  const { access } = ground.rows.columns[row]!.candidate.at;
  const shut = access === null ? [] : groupsToOpen(ground.circuit, access).filter(({ id }) => !now.open.includes(id));
  return SAY.hint(
    rowText(ground, row),
    shut.map(({ label }) => label),
  );
}

/** A reading that is expected to tell less than this many bits tells nothing. */
export const NOTHING_BITS = 0.03;

/** Number of the row that the planner reads next; null where one repair is as good as certain or no row tells more. */
export function nextRow(ground: Ground, now: Standing, evident: Evident): number | null {
  const { problem, living } = sightOf(ground, evident);
  const tells = tellsOf(problem);
  const pool = distinct(problem, unread(ground, evident)).filter((row) => tells.probe(living, row) >= NOTHING_BITS);
  return planner(problem, tells, pool)(living, standFor(ground, now))?.probe ?? null;
}

/** Allowed rows of which some setting was not read yet; what is looked at looks the same in any setting. */
export function unread({ rows, allowed }: Ground, { readings }: Evident): readonly number[] {
  const read = new Set(readings.map(spelled));
  return allowed.filter((row) => {
    const { candidate } = rows.columns[row]!;
    return candidate.conditions.some((number) => !read.has(spelled(probeFor(candidate, rows.conditions[number]!))));
  });
}

function spelled(probe: Probe): string {
  return probeText(probe.instrument === "look" ? { ...probe, condition: {} } : probe);
}
