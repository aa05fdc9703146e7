import type { PointId } from "../base/ids.ts";
import { INSTRUMENT_CAUTIONS as WORDS } from "../base/words/instruments.ts";
import type { Circuit } from "../circuit/circuit.ts";
import type { Lead } from "../live/attachment.ts";
import type { Clipped, LeadsClipped } from "../live/instruments/clipped.ts";
import { JUMPER_FUSE } from "../trade/instruments.ts";
import { loadAcross, netAt, untouchable } from "./leadRules.ts";
import { testPointsOf } from "./testPoint.ts";

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
  const untouched = untouchable(circuit, point);
  if (untouched?.is === "do-not-probe") return [WORDS.doNotProbe(point, untouched.reason)];
  if (instrument === "voltmeter") return [];
  if (untouched?.is === "module-pin") return [WORDS.modulePin(point)];
  const isHeavy = instrument === "heavy-lamp" || (instrument === "stand-in" && amps > 1);
  const isThin = testPointsOf(circuit).find((at) => at.point === point)?.lamp === "0.25 A lamp";
  return isHeavy && isThin ? [WORDS.thinWire(point)] : [];
}

/** Whether a jumper joins the battery's two sides. */
function isDeadShort(circuit: Circuit, leads: readonly Lead[]): boolean {
  const nets = leads.map((lead) => netAt(circuit, lead));
  const posts = (["battery +", "battery -"] as const).map((post) => netAt(circuit, post));
  return leads.length === 2 && posts.every((net) => net !== undefined && nets.includes(net));
}
