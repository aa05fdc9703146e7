import type { PartId } from "../base/ids.ts";
import type { Seconds } from "../base/units.ts";
import type { Circuit } from "../circuit/circuit.ts";
import type { Fault } from "../live/fault.ts";
import { type Live, liveFrom, type Work } from "../live/live.ts";
import { Rig } from "../live/rig.ts";
import type { Standing } from "../live/standing.ts";

/** Most flashes a second that may ever be shown: WCAG 2.2, success criterion 2.3.1. */
export const MOST_FLASHES = 3;
/** Flashes a second of a flasher: 90 a minute, the middle of what is usual (from memory, no source). */
const FLASHES = 1.5;
/** Share of a flash that is lit. */
const LIT = 0.5;

/** A flash of this pace, held to `MOST_FLASHES`, in seconds. */
export function flashSeconds(flashes: number = FLASHES): Seconds {
  return 1 / Math.min(flashes, MOST_FLASHES);
}

/** Whether what flashes is lit at this time; always where nothing may move. */
export function isLit(seconds: Seconds, isStill: boolean): boolean {
  return isStill || (seconds / flashSeconds()) % 1 < LIT;
}

/** The parts that make others flash. */
export function flashing(live: Live): readonly PartId[] {
  return [...live.parts].flatMap(([id, { doing }]) => (doing === "flashing" ? [id] : []));
}

/**
 * The same moment while its flashers are open: what they feed is dark. Null where nothing flashes. A live state has them
 * closed, so that what they feed is judged lit; this one is only for the eye.
 */
export function darkMoment(
  circuit: Circuit,
  live: Live,
  standing: Standing,
  faults: readonly Fault[] = [],
  healthyWork: Work | null = null,
): Live | null {
  const open = flashing(live).map((target): Fault => ({ target, mode: "stuck-open" }));
  if (open.length === 0) return null;
  return liveFrom(new Rig(circuit, [...faults, ...open]), standing, live.condition, healthyWork).live;
}
