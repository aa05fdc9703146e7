import type { PartId } from "../base/ids.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { partAt } from "../circuit/points.ts";
import { meltedIn } from "../diagnose/predict.ts";
import { type Fault, faultModes } from "../live/fault.ts";
import { Rig } from "../live/rig.ts";
import { reach } from "../live/settle.ts";

/** A part for which a new one was put in, and how the vehicle stood since, that moment included. */
export interface Renewed {
  readonly part: PartId;
  readonly since: readonly Condition[];
}

/** Kinds that sit in a socket, of which whoever works on a vehicle has a new one at hand. */
const SPARES: readonly string[] = ["fuse", "breaker", "relay", "flasher", "lamp", "two-filament-lamp"];

/** Whether there is a new one of a part to put in its place. */
export function hasSpare(circuit: Circuit, part: PartId): boolean {
  return SPARES.includes(partAt(circuit, part)?.kind ?? "");
}

/**
 * The faults of a vehicle after parts were renewed: what a new part mends is gone, and a fuse that melted, in the complaint before
 * it was renewed or in what was thrown since, counts as blown. Nothing else is mended by it.
 */
export function faultsAfter(
  circuit: Circuit,
  faults: readonly Fault[],
  complaint: Condition,
  renewed: readonly Renewed[],
): readonly Fault[] {
  const fresh = renewed.map(({ part }) => part);
  const left = faults.filter((fault) => !fresh.includes(fault.target) || !isMendedByNew(circuit, fault));
  const melted = new Set(meltedIn(new Rig(circuit, faults), complaint).filter((fuse) => !fresh.includes(fuse)));
  const rig = new Rig(circuit, left);
  for (const { since } of renewed)
    for (const condition of since)
      for (const each of reach(rig, condition, undefined, [...melted]).happenings)
        if (each.what === "melted") melted.add(each.part);
  return [...left, ...[...melted].map((target): Fault => ({ target, mode: "blown" }))];
}

function isMendedByNew(circuit: Circuit, { target, mode }: Fault): boolean {
  const modes = faultModes(circuit, { is: "part", id: target });
  return modes.find((each) => each.mode === mode)?.repair === "replace";
}
