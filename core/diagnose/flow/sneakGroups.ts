import type { Share } from "../../base/units.ts";
import type { Sneak } from "./sneaks.ts";

/** What a sneak path comes to: something runs that should not, something glows, or nobody would see it. */
export type SneakGroup = "runs" | "glows" | "unseen";

/** Share of its amps from which something may be seen of a load (our own number). */
export const VISIBLE_FROM: Share = 0.3;

/** Sneak paths of one group. */
export interface GroupedSneaks {
  readonly group: SneakGroup;
  /** Those of one opening stand together, what matters most first. */
  readonly stories: readonly (readonly Sneak[])[];
}

/** Sneak paths by what they come to, what runs backwards or by itself first; a group without any is left out. */
export function groupedSneaks(sneaks: readonly Sneak[]): readonly GroupedSneaks[] {
  return GROUPS.flatMap((group): readonly GroupedSneaks[] => {
    const own = sneaks.filter((sneak) => groupOf(sneak) === group);
    return own.length === 0 ? [] : [{ group, stories: storiesOf(own) }];
  });
}

const GROUPS: readonly SneakGroup[] = ["runs", "glows", "unseen"];

function groupOf({ loads }: Sneak): SneakGroup {
  if (loads.some(({ verdict }) => verdict === "wrong" || verdict === "strong")) return "runs";
  return loads.some(({ share, verdict }) => verdict === null && share >= VISIBLE_FROM) ? "glows" : "unseen";
}

function storiesOf(sneaks: readonly Sneak[]): readonly (readonly Sneak[])[] {
  const stories = new Map<string, Sneak[]>();
  for (const sneak of sneaks) {
    const opening = sneak.openings.map(({ target }) => target).join(" ");
    const story = stories.get(opening);
    if (story) story.push(sneak);
    else stories.set(opening, [sneak]);
  }
  return [...stories.values()];
}
