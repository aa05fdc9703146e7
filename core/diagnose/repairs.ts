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
  return groupedBy(suspects, ({ repairGroup }) => repairGroup)
    .map(({ name, ...group }) => ({ repair: name, ...group }))
    .sort((one, other) => other.share - one.share);
}

/** Suspects of one name together, with their share together; groups in the order in which their first suspect comes. */
export function groupedBy(
  suspects: readonly Suspect[],
  nameOf: (suspect: Suspect) => string,
): readonly { readonly name: string; readonly share: Share; readonly suspects: readonly Suspect[] }[] {
  const groups = new Map<string, Suspect[]>();
  for (const suspect of suspects) {
    const name = nameOf(suspect);
    const group = groups.get(name);
    if (group) group.push(suspect);
    else groups.set(name, [suspect]);
  }
  return [...groups].map(([name, own]) => ({
    name,
    share: own.reduce((sum, { probability }) => sum + probability, 0),
    suspects: own,
  }));
}
