import type { Around, Kind, PartView, Pose } from "../parts/kind.ts";

/** How a part stands with nothing thrown: controls at their first position, relays released, engine stopped. */
export function restPose(kind: Kind, view: PartView): Pose {
  const rest = new Set(kind.closed(view, kind.start, aroundAtRest(view)));
  return { closed: rest, rest, state: kind.start };
}

/** How a part stands now, its rest beside it. */
export function livePose({ rest }: Pose, now: { closed: ReadonlySet<string>; state: string }): Pose {
  return { closed: now.closed, rest, state: now.state };
}

/** States in which a part stands otherwise than at rest. */
const STATES = ["pulled-in", "melted", "tripped"];

/** Every way a part may stand but its rest: each control in each position, the others at rest, and each state. */
export function otherPoses(kind: Kind, view: PartView, rest: Pose): readonly Pose[] {
  const around = aroundAtRest(view);
  const thrown = view.controls.flatMap(({ name, positions }) =>
    positions.slice(1).map((position) => {
      const standing = { ...around, positions: { ...around.positions, [name]: position.name } };
      return { closed: new Set(kind.closed(view, kind.start, standing)), rest: rest.rest, state: kind.start };
    }),
  );
  const changed = STATES.map((state) => ({
    closed: new Set(kind.closed(view, state, around)),
    rest: rest.rest,
    state,
  }));
  return [...thrown, ...changed];
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
