import type { Fault } from "../live/fault.ts";

/** When a complaint shows, as whoever brought it says. */
export const CIRCUMSTANCES = ["hot", "cold", "wet", "bumps"] as const;
/** One of the circumstances: hot or cold engine and weather, wet, over bumps. */
export type Circumstance = (typeof CIRCUMSTANCES)[number];

/** Those of them that bring a fault on which comes and goes. */
export const HAPPENS = ["hot", "wet", "bumps"] as const satisfies readonly Circumstance[];
/** One of them. */
export type Happens = (typeof HAPPENS)[number];

/** Those of some circumstances that bring a fault on. */
export function happensIn(when: readonly Circumstance[]): readonly Happens[] {
  return HAPPENS.filter((each) => when.includes(each));
}

/** How readily a sort of fault comes and goes at all, and how much more where heat, water or bumps bring it on. */
interface Manner extends Readonly<Record<Happens, number>> {
  readonly modes: RegExp;
  /** Share of such faults that come and go; 1 for most of them. */
  readonly share: number;
}

/**
 * Guesses all, by sort of fault, the first that fits. Published is only the order: connections before parts, and what has
 * burnt through stays so.
 */
const MANNERS: readonly Manner[] = [
  { modes: /^backed-out$/, share: 1, hot: 1, wet: 1, bumps: 4 },
  { modes: /^corroded$/, share: 1, hot: 1, wet: 4, bumps: 2 },
  { modes: /^short-to-(ground|feed)$/, share: 1, hot: 1, wet: 3, bumps: 4 },
  { modes: /^(open|ohms)/, share: 0.6, hot: 2, wet: 1, bumps: 3 },
  { modes: /^(leg-|off|loose)/, share: 1, hot: 1, wet: 2, bumps: 4 },
  { modes: /^(coil|cut-out|stays-out)/, share: 0.6, hot: 4, wet: 1, bumps: 1 },
  { modes: /^(stuck|welded|contact|burnt|poor)/, share: 0.6, hot: 2, wet: 1, bumps: 2 },
  { modes: /^(seized|jammed|worn)$/, share: 0.4, hot: 2, wet: 1, bumps: 1 },
  { modes: /^(output|dead|stays-awake)/, share: 0.4, hot: 3, wet: 2, bumps: 1 },
  { modes: /^(blown|flat|left-in|burnt-out|link-melted|filaments)/, share: 0.03, hot: 1, wet: 1, bumps: 1 },
];
const OTHER: Omit<Manner, "modes"> = { share: 0.3, hot: 1, wet: 1, bumps: 1 };

/** What a fault's weight is multiplied by where the complaint comes and goes, and comes with these. */
export function comesAndGoes({ mode }: Pick<Fault, "mode">, when: readonly Circumstance[]): number {
  const manner = MANNERS.find(({ modes }) => modes.test(mode)) ?? OTHER;
  return happensIn(when).reduce((factor, each) => factor * manner[each], manner.share);
}
