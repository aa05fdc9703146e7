import { JOB_SENTENCES as SAY } from "../base/words/job.ts";
import { percent } from "./progressWords.ts";
import { repairsOf } from "./repairs.ts";
import type { ProbeOrder } from "./step.ts";

/**
 * What speaks against taking a suspect for the cause, in sentences; none for the likeliest repair. A verdict is a person's: it
 * may be filed all the same.
 */
export function against({ suspects, clearedBy }: ProbeOrder, suspect: string): readonly string[] {
  const leader = repairsOf(suspects)[0];
  const own = suspects.find(({ id }) => id === suspect);
  if (own && leader) {
    if (own.repairGroup === leader.repair) return [];
    return [SAY.likelier(leader.suspects[0]!.title, percent(leader.share), percent(own.probability))];
  }
  const cleared = clearedBy.find((each) => each.suspect.id === suspect);
  if (!cleared) return [SAY.notSuspected(suspect)];
  return [
    cleared.by === 0 ? SAY.clearedByWorks(cleared.suspect.title) : SAY.clearedBy(cleared.suspect.title, cleared.by),
  ];
}

/** How likely a suspect is now, cleared ones included; 0 for what is not suspected. */
export function shareOf({ suspects, cleared }: ProbeOrder, suspect: string): number {
  return [...suspects, ...cleared].find(({ id }) => id === suspect)?.probability ?? 0;
}
