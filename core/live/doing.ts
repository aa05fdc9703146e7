import type { PartId } from "../base/ids.ts";
import type { Doing } from "../parts/kind.ts";
import type { Rig } from "./rig.ts";

const NOTHING: Doing = { doing: "off", amps: 0, watts: 0, work: 0 };

/** What a part does in a settled rig; "off" with nought of everything where it is of a kind that does nothing. */
export function doingIn(rig: Rig, id: PartId): Doing {
  const placed = rig.network.parts.get(id)!;
  return placed.kind.doing(placed.view, rig.states.get(id)!, rig.sees(placed), rig.around(placed)) ?? NOTHING;
}
