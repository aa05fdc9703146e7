/** Reloads within a minute after which a person is asked instead. */
export const MOST_RELOADS = 3;
const MINUTE_MS = 60_000;

/** True where a page that failed may be loaded again by itself; `times` are those of the reloads so far. */
export function mayReload(times: readonly Date[], now: Date): boolean {
  return times.filter((time) => now.getTime() - time.getTime() < MINUTE_MS).length < MOST_RELOADS;
}
