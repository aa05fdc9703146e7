import type { PartId, PointId } from "../base/ids.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { netOf } from "../circuit/nets.ts";
import { terminalPoint, terminalsOf } from "../circuit/points.ts";
import type { Lead } from "../live/attachment.ts";
import { plusBattery, referenceBattery } from "../live/network.ts";
import { kindOf } from "../parts/catalogue.ts";
import { reachOf, testPointsOf } from "./testPoint.ts";

/** Why nothing that carries current may be put on a point; null where it may. */
export type Untouchable =
  | { readonly is: "do-not-probe"; readonly reason: string }
  | { readonly is: "module-pin" }
  | null;

/** What keeps a lamp, a jumper or an ohmmeter off a point: what its reach says, else a module's pin on its net. */
export function untouchable(circuit: Circuit, point: PointId): Untouchable {
  const { doNotProbe } = reachOf(circuit, point);
  if (doNotProbe !== undefined) return { is: "do-not-probe", reason: doNotProbe };
  return testPointsOf(circuit).find((at) => at.point === point)?.lamp === null ? { is: "module-pin" } : null;
}

/** A load both of whose sides two leads join; null where there is none. */
export function loadAcross(circuit: Circuit, leads: readonly Lead[]): PartId | null {
  const nets = leads.map((lead) => netAt(circuit, lead));
  if (nets.length < 2 || nets[0] === nets[1]) return null;
  const isAcross = circuit.parts.find((part) => {
    if (kindOf(part.kind)?.role !== "load") return false;
    const own = new Set(terminalsOf(circuit, part).map((terminal) => netOf(circuit, terminalPoint(part, terminal))));
    return nets.every((net) => net !== undefined && own.has(net));
  });
  return isAcross?.id ?? null;
}

/** The net that a lead is on; of a post, that of the battery's terminal. */
export function netAt(circuit: Circuit, lead: Lead): ReturnType<typeof netOf> {
  if (lead !== "battery +" && lead !== "battery -") return netOf(circuit, lead);
  const battery = lead === "battery +" ? plusBattery(circuit) : referenceBattery(circuit);
  return battery ? netOf(circuit, terminalPoint(battery, lead === "battery +" ? "+" : "-")) : undefined;
}
