import type { Around, Kind, PartView, Pose } from "../parts/kind.ts";

/** How a part stands with nothing thrown: controls at their first position, relays released, engine stopped. */
export function restPose(kind: Kind, view: PartView): Pose {
  const rest = new Set(kind.closed(view, kind.start, aroundAtRest(view)));
  return { closed: rest, rest, state: kind.start };
}

/** How a part stands now, its rest beside it. */
export function livePose(kind: Kind, view: PartView, now: { closed: ReadonlySet<string>; state: string }): Pose {
  return { closed: now.closed, rest: restPose(kind, view).rest, state: now.state };
}

/** Room temperature: contacts at rest are drawn as they are in a workshop. */
const WORKSHOP_CELSIUS = 20;

function aroundAtRest(view: PartView): Around {
  return {
    positions: Object.fromEntries(view.controls.map(({ name, positions }) => [name, positions[0]?.name ?? ""])),
    drive: {},
    engineRunning: false,
    ambientC: WORKSHOP_CELSIUS,
    nominalVolts: view.nominalVolts,
  };
}
