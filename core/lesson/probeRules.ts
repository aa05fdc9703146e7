import { type Refusal, refuse } from "../base/outcome.ts";
import { INSTRUMENT_NAMES } from "../base/words/exercise.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { connectorAt, partAt } from "../circuit/points.ts";
import { feedingOf } from "../diagnose/feeding.ts";
import { fuseAcross, lampForFuse } from "../diagnose/inPlace.ts";
import { fedLead, takesClamp } from "../diagnose/otherUnits.ts";
import { isModule } from "../diagnose/scanTool.ts";
import { isAct, isBySense } from "../diagnose/step.ts";
import { groupsToOpen, reachOf, testPointsOf } from "../diagnose/testPoint.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { Exercise } from "./exercise.ts";
import type { ProbeMove } from "./move.ts";
import type { Standing } from "./moveMinutes.ts";

const no = (code: string, about: Refusal["about"] = {}): Refusal => refuse(code, about).refusal;

/** Why something cannot be read or looked at as things stand, or null where it can. */
export function probeRefusal({ circuit, instruments }: Exercise, now: Standing, move: ProbeMove): Refusal | null {
  const { red, black, instrument } = move;
  if (!instruments.includes(instrument))
    return no("move-instrument", {
      instrument: INSTRUMENT_NAMES[instrument],
      allowed: instruments.map((each) => INSTRUMENT_NAMES[each]).join(", "),
    });
  if (isAct(instrument)) return actRefusal(circuit, now, move);
  if (isBySense(instrument)) return senseRefusal(circuit, now, move);
  if (red === black) return no("move-same-point", { point: red });
  const shut = leadRefusal(circuit, now, red) ?? leadRefusal(circuit, now, black);
  return shut ?? unitRefusal(circuit, now, move) ?? lampRefusal(circuit, now, move);
}

/** Why a lead does not go on a place. The battery's posts are always at hand. */
function leadRefusal(circuit: Circuit, now: Standing, lead: string): Refusal | null {
  if (lead === "battery +" || lead === "battery -") return null;
  const at = testPointsOf(circuit).find(({ point }) => point === lead);
  if (!at) return no("move-no-point", { point: lead });
  if (at.doNotProbe !== null) return no("move-forbidden", { place: lead, reason: at.doNotProbe });
  return trimRefusal(circuit, now, lead, at.access);
}

/** Why no ohms are read, or no clamp goes on: by the drawing alone, so that it tells nothing of what is wrong. */
function unitRefusal(circuit: Circuit, { condition }: Standing, { red, black, instrument }: ProbeMove): Refusal | null {
  if (instrument === "clamp" && (black !== "battery -" || !takesClamp(circuit, red)))
    return no("reading-clamp", { point: red });
  const fed = instrument === "meter ohms" ? fedLead(circuit, red, black, condition) : null;
  return fed === null ? null : no("reading-live", { lead: fed });
}

function lampRefusal(circuit: Circuit, { condition }: Standing, move: ProbeMove): Refusal | null {
  const { red, black, instrument, lampTo } = move;
  if (lampTo === null) return null;
  if (lampTo === "black") {
    const fuse = fuseAcross(circuit, red, black);
    if (fuse === null) return no("move-no-fuse", { red, black });
    if (!condition.out?.includes(fuse)) return no("move-fuse-in", { fuse });
    return heavier(instrument, lampForFuse(circuit, fuse)) ? no("move-lamp", { point: fuse }) : null;
  }
  const at = testPointsOf(circuit).find(({ point }) => point === red);
  if (!at?.lamp) return no("reading-lamp", { point: red, reason: "a module's pin hangs on it" });
  return heavier(instrument, at.lamp) ? no("move-lamp", { point: red }) : null;
}

/** Whether a lamp draws more than a place can give. */
function heavier(lamp: ProbeMove["instrument"], most: "4 A lamp" | "0.25 A lamp"): boolean {
  return lamp === "4 A lamp" && most === "0.25 A lamp";
}

function actRefusal(circuit: Circuit, now: Standing, { red, instrument }: ProbeMove): Refusal | null {
  const kind = partAt(circuit, red)?.kind;
  const feeding = feedingOf(circuit)(red);
  const canBe = instrument === "like relay" ? kind === "relay" : feeding !== null;
  if (!canBe || (instrument === "fed loose" && kind !== "motor"))
    return no("reading-act", { part: red, act: instrument });
  if (instrument === "like relay") return placeRefusal(circuit, now, red);
  const own = instrument === "fed loose" ? placeRefusal(circuit, now, red) : null;
  return own ?? placeRefusal(circuit, now, feeding!.plug);
}

function senseRefusal(circuit: Circuit, now: Standing, { red, instrument }: ProbeMove): Refusal | null {
  const kind = kindOf(partAt(circuit, red)?.kind ?? "");
  if (instrument === "scan tool") return isModule(circuit, red) ? null : no("move-no-module", { part: red });
  if (instrument === "listen") {
    if (kind?.name !== "relay") return no("move-silent", { part: red });
    return Object.keys(now.condition.set ?? {}).length === 0 ? no("move-nothing-thrown", { part: red }) : null;
  }
  const canBeSeen = connectorAt(circuit, red) !== undefined || kind?.name === "fuse" || kind?.role === "control";
  return canBeSeen ? placeRefusal(circuit, now, red) : no("reading-part", { part: red });
}

/** Why nothing can be done at a part or plug: it is not to be touched, or trim is in front of it. */
export function placeRefusal(circuit: Circuit, now: Standing, id: string): Refusal | null {
  const { access = null, doNotProbe } = reachOf(circuit, id);
  if (doNotProbe !== undefined) return no("move-forbidden", { place: id, reason: doNotProbe });
  return trimRefusal(circuit, now, id, access);
}

function trimRefusal(circuit: Circuit, { open }: Standing, place: string, access: string | null): Refusal | null {
  if (access === null) return null;
  const shut = groupsToOpen(circuit, access).find(({ id }) => !open.includes(id));
  return shut ? no("move-trim", { place, trim: shut.label, access: shut.id }) : null;
}
