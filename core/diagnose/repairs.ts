import type { Share } from "../base/units.ts";
import type { Suspect } from "./step.ts";

/** A repair, with the suspects that it mends and their share together. */
export interface Repair {
  readonly repair: string;
  readonly share: Share;
  /** Likeliest first. */
  readonly suspects: readonly Suspect[];
}

/** The repairs that suspects come down to, likeliest first. */
export function repairsOf(suspects: readonly Suspect[]): readonly Repair[] {
  const groups = new Map<string, Suspect[]>();
  for (const suspect of suspects) {
    const group = groups.get(suspect.repairGroup);
    if (group) group.push(suspect);
    else groups.set(suspect.repairGroup, [suspect]);
  }
  return [...groups]
    .map(([repair, own]) => ({
      repair,
      share: own.reduce((sum, { probability }) => sum + probability, 0),
      suspects: own,
    }))
    .sort((one, other) => other.share - one.share);
}
