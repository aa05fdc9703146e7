import type { PartId, PointId } from "../base/ids.ts";
import type { Ohms } from "../base/units.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { partAt, terminalPoint, wireSideOf } from "../circuit/points.ts";
import type { Lead } from "../live/attachment.ts";
import { Rig } from "../live/rig.ts";
import { reach } from "../live/settle.ts";
import { kindOf } from "../parts/catalogue.ts";
import { linkOhms } from "../parts/fuse.ts";
import { viewOf } from "../parts/view.ts";

/** A fuse of fewer amps gets the small lamp in its place: the heavy one could pass what the fuse is there to stop. */
const HEAVY_FROM_AMPS = 5;

/** The lamp that stands in for a fuse, by the fuse's rating. */
export function lampForFuse(circuit: Circuit, fuse: PartId): "4 A lamp" | "0.25 A lamp" {
  const part = partAt(circuit, fuse);
  const kind = part && kindOf(part.kind);
  const amps = part && kind ? viewOf(kind, part, circuit.nominalVolts).number("amps") : 0;
  return amps >= HEAVY_FROM_AMPS ? "4 A lamp" : "0.25 A lamp";
}

/** Cold ohms of a fuse: what turns the millivolts across it into milliamps. */
export function fuseOhmsOf(circuit: Circuit, fuse: PartId): Ohms {
  const part = partAt(circuit, fuse);
  const kind = part && kindOf(part.kind);
  return part && kind ? linkOhms(viewOf(kind, part, circuit.nominalVolts)) : 0;
}

/** The places to touch of a fuse's two blades, as they are numbered. */
export function bladesOf(circuit: Circuit, fuse: PartId): readonly [PointId, PointId] {
  const part = partAt(circuit, fuse);
  const at = (terminal: string): PointId =>
    part ? wireSideOf(circuit, terminalPoint(part, terminal)) : `${fuse}.${terminal}`;
  return [at("1"), at("2")];
}

/** The fuse on whose two blades the leads lie, or null. */
export function fuseAcross(circuit: Circuit, red: Lead, black: Lead): PartId | null {
  const fuse = circuit.parts.find(({ id, kind }) => {
    if (kind !== "fuse" || red === black) return false;
    const blades: readonly Lead[] = bladesOf(circuit, id);
    return blades.includes(red) && blades.includes(black);
  });
  return fuse?.id ?? null;
}

/** The blades of a fuse that is out, the fed one first, as the healthy circuit feeds them in a condition. */
export function fedFirst(circuit: Circuit, fuse: PartId, condition: Condition): readonly [PointId, PointId] {
  const [one, other] = bladesOf(circuit, fuse);
  const rig = new Rig(circuit);
  reach(rig, condition);
  const volts = (point: PointId): number => rig.solver.volts(rig.network.nodes.get(point)!);
  return volts(other) > volts(one) ? [other, one] : [one, other];
}
