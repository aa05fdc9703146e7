import type { Volts } from "../base/units.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { terminalPoint } from "../circuit/points.ts";
import { openVolts } from "../trade/battery.ts";
import { liveOf } from "./live.ts";
import { plusBattery } from "./network.ts";

/** Volts of "battery +" with everything at rest, rounded to tenths; those of a full battery where there is none. */
export function restVoltsOf(circuit: Circuit): Volts {
  const battery = plusBattery(circuit);
  const volts = battery && liveOf(circuit).points.get(terminalPoint(battery, "+"))?.volts;
  return typeof volts === "number" ? Math.round(volts * 10) / 10 : openVolts(1, circuit.nominalVolts);
}

/** Measured volts of the battery at rest over the drawing's: what its figures are multiplied by; 1 where nobody measured. */
export function measuredScale(circuit: Circuit, measured: Volts | null): number {
  return measured === null ? 1 : measured / restVoltsOf(circuit);
}
