import type { PartId, PointId } from "../base/ids.ts";
import { INSTRUMENT_CAUTIONS as WORDS } from "../base/words/instruments.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { netOf } from "../circuit/nets.ts";
import { terminalsOf } from "../circuit/points.ts";
import type { Lead } from "../live/attachment.ts";
import type { Clipped, LeadsClipped } from "../live/instruments/clipped.ts";
import { kindOf } from "../parts/catalogue.ts";
import { JUMPER_FUSE } from "../trade/instruments.ts";
import { reachOf, testPointsOf } from "./testPoint.ts";

/**
 * What to mind with an instrument where it is clipped now, in sentences, the gravest first: a pin not to be probed, a lamp,
 * jumper or ohmmeter on a module's pin, a load on a thin wire, a jumper across a load, what may move or get hot.
 */
export function clippedCautions(circuit: Circuit, each: Clipped): readonly string[] {
  if (each.instrument === "clamp") return [];
  const points = [each.red, each.black].filter(isPoint);
  const across = each.instrument === "jumper" ? loadAcross(circuit, each) : null;
  return [
    ...points.flatMap((point) => pointCaution(circuit, each, point)),
    ...(across === null ? [] : [WORDS.acrossLoad(across)]),
    ...(each.instrument === "jumper" && (each.amps ?? 0) > JUMPER_FUSE.amps ? [WORDS.bigFuse(JUMPER_FUSE.amps)] : []),
    ...(each.instrument === "jumper" && points.length > 0 ? [WORDS.mayMove] : []),
    ...(each.instrument === "heavy-lamp" || each.instrument === "stand-in" ? [WORDS.hot] : []),
  ];
}

function isPoint(lead: Lead | null): lead is PointId {
  return lead !== null && lead !== "battery +" && lead !== "battery -";
}

function pointCaution(circuit: Circuit, { instrument, amps = 0 }: LeadsClipped, point: PointId): readonly string[] {
  const { doNotProbe } = reachOf(circuit, point);
  if (doNotProbe !== undefined) return [WORDS.doNotProbe(point, doNotProbe)];
  if (instrument === "voltmeter") return [];
  const lamp = testPointsOf(circuit).find((at) => at.point === point)?.lamp;
  if (lamp === null) return [WORDS.modulePin(point)];
  const isHeavy = instrument === "heavy-lamp" || (instrument === "stand-in" && amps > 1);
  return isHeavy && lamp === "0.25 A lamp" ? [WORDS.thinWire(point)] : [];
}

/** A load both of whose sides a jumper joins; null where there is none. */
function loadAcross(circuit: Circuit, { red, black }: LeadsClipped): PartId | null {
  if (!isPoint(red) || !isPoint(black)) return null;
  const nets = [red, black].map((point) => netOf(circuit, point));
  const isAcross = circuit.parts.find((part) => {
    if (kindOf(part.kind)?.role !== "load") return false;
    const own = new Set(terminalsOf(circuit, part).map((terminal) => netOf(circuit, `${part.id}.${terminal}`)));
    return nets[0] !== nets[1] && nets.every((net) => net !== undefined && own.has(net));
  });
  return isAcross?.id ?? null;
}
