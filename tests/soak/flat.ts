/** Growth from the first third of what was seen after the warm-up to the last that still counts as flat. */
export const MOST_GROWTH = 0.1;
/** Share of the time in which caches fill and code is compiled. */
const WARM_SHARE = 0.25;
/** Fewer looks tell nothing. */
const FEWEST = 6;

/** What was seen at one moment: names of things with how much there was of each; null where the system does not tell. */
export type Seen = Readonly<Record<string, number | null>>;

/** How one of the things grew. */
export interface Grown {
  readonly name: string;
  /** What the first and the last third after the warm-up come down to: a quarter of the looks show less. */
  readonly first: number;
  readonly last: number;
  /** From first to last: 0.1 is a tenth more. */
  readonly growth: number;
  readonly isFlat: boolean;
}

/**
 * How each thing grew over looks that were taken one after the other; what the system does not tell is left out. `slack` is how
 * much more of a thing, in its own unit, is still no growth: a few of very few are no tenth. Throws where there are too few looks.
 */
export function growthOf(looks: readonly Seen[], slack: Readonly<Record<string, number>> = {}): readonly Grown[] {
  const warm = looks.slice(Math.floor(looks.length * WARM_SHARE));
  if (warm.length < FEWEST) throw new Error(`${warm.length} looks after the warm-up tell nothing: ${FEWEST} do`);
  const third = Math.floor(warm.length / 3);
  return Object.keys(warm[0]!).flatMap((name) => {
    const numbers = warm.flatMap((look) => look[name] ?? []);
    if (numbers.length < warm.length) return [];
    const first = lowOf(numbers.slice(0, third));
    const last = lowOf(numbers.slice(-third));
    const growth = first === 0 ? (last === 0 ? 0 : Number.POSITIVE_INFINITY) : last / first - 1;
    const isFlat = growth <= MOST_GROWTH || last - first <= (slack[name] ?? 0);
    return [{ name, first, last, growth, isFlat }];
  });
}

/** Memory is let go of in its own time, so that what is there at the ebb tells what is held. */
function lowOf(numbers: readonly number[]): number {
  return numbers.toSorted((a, b) => a - b)[numbers.length >> 2]!;
}
