import type { PartId } from "../base/ids.ts";
import { remember } from "../base/memo.ts";
import { type Doing, doesNothing } from "../parts/kind.ts";
import type { CircuitNetwork, PlacedPart } from "./network.ts";
import type { Rig } from "./rig.ts";

const NOTHING: Doing = { doing: "off", amps: 0, watts: 0, work: 0 };

/** What a part does in a settled rig; "off" with nought of everything where it is of a kind that does nothing. */
export function doingIn(rig: Rig, id: PartId): Doing {
  return doingOf(rig, rig.network.parts.get(id)!) ?? NOTHING;
}

/** Parts of a network that may do something. */
const doersIn = remember((parts: CircuitNetwork["parts"]) =>
  [...parts.values()].filter(({ kind }) => kind.doing !== doesNothing),
);

/** What every part does that does anything, by part. */
export function doingsIn(rig: Rig): ReadonlyMap<PartId, Doing> {
  const doing = new Map<PartId, Doing>();
  for (const placed of doersIn(rig.network.parts)) {
    const does = doingOf(rig, placed);
    if (does) doing.set(placed.part.id, does);
  }
  return doing;
}

/** What a placed part does in a settled rig; null where it is of a kind that does nothing. */
export function doingOf(rig: Rig, placed: PlacedPart): Doing | null {
  return placed.kind.doing(placed.view, rig.states.get(placed.part.id)!, rig.sees(placed), rig.around(placed));
}
