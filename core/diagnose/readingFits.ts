import type { Circuit } from "../circuit/circuit.ts";
import { connectorAt, partAt, pointAt } from "../circuit/points.ts";
import { conditionRefusal } from "../live/condition.ts";
import type { Probe } from "./reading.ts";
import { isBySense } from "./step.ts";

/**
 * Whether a reading can still be understood on this circuit: its points are there and its condition can be reached. A
 * reading is a fact and is kept; where the drawing has changed under it, it is only not counted.
 */
export function readingFits(circuit: Circuit, { red, black, instrument, condition }: Probe): boolean {
  const isThere = isBySense(instrument)
    ? partAt(circuit, red) !== undefined || connectorAt(circuit, red) !== undefined
    : isLead(circuit, red) && isLead(circuit, black);
  return isThere && conditionRefusal(circuit, condition) === null;
}

function isLead(circuit: Circuit, lead: string): boolean {
  return lead === "battery +" || lead === "battery -" || pointAt(circuit, lead) !== undefined;
}
