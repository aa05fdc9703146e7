import type { PartId, PointId, WireId } from "../base/ids.ts";
import type { Share, Volts } from "../base/units.ts";
import type { Live, PartLive, PointLive } from "./live.ts";

/** Wires, parts and points that differ between two live states. */
export interface Differs {
  readonly wires: ReadonlySet<WireId>;
  readonly parts: ReadonlySet<PartId>;
  readonly points: ReadonlySet<PointId>;
}

/** Volts this far apart, as a share of nominal, count as different: a printed range is as wide (our own number). */
const DIFFERENT_VOLTS: Share = 0.02;
/** A load whose work changed by this share counts as different (our own number). */
const DIFFERENT_WORK: Share = 0.05;

/** What differs between two live states of one circuit: in state, in volts, or in the work that is done. */
export function differencesOf(before: Live, after: Live, nominalVolts: Volts): Differs {
  const wires = new Set<WireId>();
  const parts = new Set<PartId>();
  const points = new Set<PointId>();
  if (before === after) return { wires, parts, points };
  const apart = DIFFERENT_VOLTS * nominalVolts;
  for (const [id, point] of after.points) if (differ(point, before.points.get(id)!, apart)) points.add(id);
  for (const [id, { state, volts }] of after.wires) {
    const was = before.wires.get(id)!;
    for (const end of [0, 1] as const) {
      const ends = [
        { state: state[end], volts: volts[end] },
        { state: was.state[end], volts: was.volts[end] },
      ] as const;
      if (differ(...ends, apart)) wires.add(id);
    }
  }
  for (const [id, part] of after.parts) if (worksOtherwise(part, before.parts.get(id)!)) parts.add(id);
  return { wires, parts, points };
}

type Reading = Pick<PointLive, "state" | "volts">;

function differ(one: Reading, other: Reading, apart: Volts): boolean {
  if (one.state !== other.state) return true;
  if (one.volts === null || other.volts === null) return one.volts !== other.volts;
  return Math.abs(one.volts - other.volts) > apart;
}

/** How much a source gives follows from what draws on it, and says nothing of the source. */
function worksOtherwise(now: PartLive, was: PartLive): boolean {
  if (isQuiet(now.doing) && isQuiet(was.doing)) return now.state !== was.state;
  if (now.doing !== was.doing || now.state !== was.state) return true;
  return now.level !== null && was.level !== null && Math.abs(now.level - was.level) > DIFFERENT_WORK;
}

/** A part that does nothing, or a source that is only drawn on: the change from one to the other is another part's. */
export function isQuiet(doing: PartLive["doing"]): boolean {
  return doing === "supplying" || doing === "off" || doing === null;
}
