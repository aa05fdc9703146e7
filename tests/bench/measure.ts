/** Warm-up before anything is measured: code that is still being compiled is many times slower. */
const WARM_MS = 400;

/** How a job is measured. */
export interface Measure {
  /** Runs at most, and milliseconds at most; three runs at least. */
  readonly times: number;
  readonly mostMs: number;
  readonly warmMs?: number;
  /** Done before every run and not counted. */
  readonly before?: () => void;
}

/** Median milliseconds of a job, after a warm-up. */
export function medianMs(job: () => void, { times, mostMs, warmMs = WARM_MS, before }: Measure): number {
  const spent: number[] = [];
  const once = (): number => {
    before?.();
    const start = performance.now();
    job();
    return performance.now() - start;
  };
  const warmUntil = performance.now() + warmMs;
  while (performance.now() < warmUntil) once();
  const until = performance.now() + mostMs;
  while (spent.length < times && (spent.length < 3 || performance.now() < until)) spent.push(once());
  return median(spent);
}

/**
 * Median milliseconds of each of some jobs that take turns: what else runs on the machine meanwhile slows all alike, so that
 * their ratios hold. Every job is warmed up first.
 */
export function mediansMs<Name extends string>(
  jobs: Readonly<Record<Name, () => void>>,
  { times, mostMs, warmMs = WARM_MS }: Measure,
): Readonly<Record<Name, number>> {
  const names = Object.keys(jobs) as Name[];
  for (const name of names) medianMs(jobs[name], { times: 1, mostMs: 0, warmMs });
  const spent = Object.fromEntries(names.map((name) => [name, [] as number[]])) as Record<Name, number[]>;
  const until = performance.now() + mostMs;
  for (let turn = 0; turn < times && (turn < 3 || performance.now() < until); turn++)
    for (const name of names) {
      const start = performance.now();
      jobs[name]();
      spent[name].push(performance.now() - start);
    }
  return Object.fromEntries(names.map((name) => [name, median(spent[name])])) as Record<Name, number>;
}

/** The middle one of some numbers. */
export function median(numbers: readonly number[]): number {
  const sorted = numbers.toSorted((a, b) => a - b);
  return sorted[sorted.length >> 1]!;
}
