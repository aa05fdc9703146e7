import type { PartId, PointId } from "../base/ids.ts";
import { INSTRUMENT_CAUTIONS as WORDS } from "../base/words/instruments.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { netOf } from "../circuit/nets.ts";
import { terminalPoint, terminalsOf } from "../circuit/points.ts";
import type { Lead } from "../live/attachment.ts";
import type { Clipped, LeadsClipped } from "../live/instruments/clipped.ts";
import { plusBattery, referenceBattery } from "../live/network.ts";
import { kindOf } from "../parts/catalogue.ts";
import { JUMPER_FUSE } from "../trade/instruments.ts";
import { reachOf, testPointsOf } from "./testPoint.ts";

/**
 * What to mind with an instrument where it is clipped now, in sentences, the gravest first: a dead short, a jumper across a load,
 * a pin not to be probed, a lamp, jumper or ohmmeter on a module's pin, a load on a thin wire, what may move or get hot.
 */
export function clippedCautions(circuit: Circuit, each: Clipped): readonly string[] {
  if (each.instrument === "clamp") return [];
  const leads = [each.red, each.black].filter((lead) => lead !== null);
  const isJumper = each.instrument === "jumper";
  const across = isJumper ? loadAcross(circuit, leads) : null;
  return [
    ...(isJumper && isDeadShort(circuit, leads) ? [WORDS.deadShort] : []),
    ...(across === null ? [] : [WORDS.acrossLoad(across)]),
    ...leads.filter(isPoint).flatMap((point) => pointCaution(circuit, each, point)),
    ...(isJumper && (each.amps ?? 0) > JUMPER_FUSE.amps ? [WORDS.bigFuse(JUMPER_FUSE.amps)] : []),
    ...(mayFeed(each) ? [WORDS.mayMove] : []),
    ...(each.instrument === "heavy-lamp" || each.instrument === "stand-in" ? [WORDS.hot] : []),
  ];
}

/** Whether it can set something moving: a jumper anywhere, a lamp or a load that is fed from the battery's plus. */
function mayFeed({ instrument, red, black }: LeadsClipped): boolean {
  if (instrument === "voltmeter" || instrument === "ohmmeter") return false;
  const isOn = red !== null || black !== null;
  return instrument === "jumper" ? isOn : red === "battery +" || black === "battery +";
}

function isPoint(lead: Lead): lead is PointId {
  return lead !== "battery +" && lead !== "battery -";
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

/** Whether a jumper joins the battery's two sides. */
function isDeadShort(circuit: Circuit, leads: readonly Lead[]): boolean {
  const nets = leads.map((lead) => netAt(circuit, lead));
  const posts = (["battery +", "battery -"] as const).map((post) => netAt(circuit, post));
  return leads.length === 2 && posts.every((net) => net !== undefined && nets.includes(net));
}

/** A load both of whose sides a jumper joins; null where there is none. */
function loadAcross(circuit: Circuit, leads: readonly Lead[]): PartId | null {
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
function netAt(circuit: Circuit, lead: Lead): ReturnType<typeof netOf> {
  if (isPoint(lead)) return netOf(circuit, lead);
  const battery = lead === "battery +" ? plusBattery(circuit) : referenceBattery(circuit);
  return battery ? netOf(circuit, terminalPoint(battery, lead === "battery +" ? "+" : "-")) : undefined;
}
