import type { PointId, WireId } from "../base/ids.ts";
import { remember } from "../base/memo.ts";
import type { Amps } from "../base/units.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import type { Lead } from "../live/attachment.ts";
import { type CircuitNetwork, leadNode } from "../live/network.ts";
import { Rig } from "../live/rig.ts";
import { reach } from "../live/settle.ts";
import { LIVE_FROM } from "../trade/instruments.ts";

/** The lead that is fed in a condition of the good circuit, so that no ohms may be read there; null where both are dead. */
export function fedLead(circuit: Circuit, red: Lead, black: Lead, condition: Condition): Lead | null {
  const rig = new Rig(circuit);
  reach(rig, condition);
  return [red, black].find((lead) => Math.abs(rig.solver.volts(leadNode(rig.network, lead))) >= LIVE_FROM) ?? null;
}

/** Of each point at which just one wire ends, which a clamp can go round there: that wire, and whether it ends or begins there. */
const clampsOf = remember((circuit: Circuit): ReadonlyMap<PointId, { readonly wire: WireId; readonly end: 0 | 1 }> => {
  const found = new Map<PointId, { readonly wire: WireId; readonly end: 0 | 1 }>();
  const several = new Set<PointId>();
  for (const { id, from, to } of circuit.wires)
    for (const [end, point] of [from, to].entries()) {
      if (found.has(point)) several.add(point);
      found.set(point, { wire: id, end: end === 0 ? 0 : 1 });
    }
  for (const point of several) found.delete(point);
  return found;
});

/** Whether a clamp can go round one wire alone at a point. */
export function takesClamp(circuit: Circuit, point: PointId): boolean {
  return clampsOf(circuit).has(point);
}

/** Element of the wire that a clamp goes round at a point: its near half where a fault sits in its middle; -1 where there is none. */
export function clampElement(circuit: Circuit, { wires }: CircuitNetwork, point: PointId): number {
  const clamp = clampsOf(circuit).get(point);
  return clamp ? wires.get(clamp.wire)![clamp.end] : -1;
}

/** Amps that a clamp round the wire at a point shows in a settled rig, without sign. */
export function clampShown(circuit: Circuit, rig: Rig, point: PointId): Amps {
  const element = clampElement(circuit, rig.network, point);
  return element < 0 || rig.isOpen[element] === 1 ? 0 : Math.abs(rig.solver.amps(element));
}
