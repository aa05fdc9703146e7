import type { Circuit } from "../circuit/circuit.ts";
import { connectorAt, partAt, pointAt } from "../circuit/points.ts";
import { conditionRefusal } from "../live/condition.ts";
import { feedingOf } from "./feeding.ts";
import { takesClamp } from "./otherUnits.ts";
import type { Probe } from "./reading.ts";
import { type Act, isAct, isBySense } from "./step.ts";

/**
 * Whether a reading can still be understood on this circuit: its points are there and its condition can be reached. A
 * reading is a fact and is kept; where the drawing has changed under it, it is only not counted.
 */
export function readingFits(circuit: Circuit, { red, black, instrument, condition }: Probe): boolean {
  if (isAct(instrument) && !canBeDone(circuit, instrument, red)) return false;
  if (instrument === "clamp" && !takesClamp(circuit, red)) return false;
  const isThere = isBySense(instrument)
    ? partAt(circuit, red) !== undefined || connectorAt(circuit, red) !== undefined
    : isLead(circuit, red) && isLead(circuit, black);
  return isThere && conditionRefusal(circuit, condition) === null;
}

/** Whether a part can still be acted on so: a load at its plug, a relay in its socket. */
function canBeDone(circuit: Circuit, act: Act, part: string): boolean {
  return act === "like relay" ? partAt(circuit, part)?.kind === "relay" : feedingOf(circuit)(part) !== null;
}

function isLead(circuit: Circuit, lead: string): boolean {
  return lead === "battery +" || lead === "battery -" || pointAt(circuit, lead) !== undefined;
}
