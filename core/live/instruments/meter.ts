import type { Volts } from "../../base/units.ts";
import { METER } from "../../trade/instruments.ts";
import type { Attachment, Lead } from "../attachment.ts";
import type { Rig } from "../rig.ts";

/** A 10 Mohm voltmeter clipped between two places. It loads the circuit as the real one does and changes no state. */
export function meterOn(red: Lead, black: Lead): Attachment {
  return { red, black, law: { law: "resistor", ohms: METER.ohms }, isMeter: true };
}

/** What a floating lead may show, the same as a ground: 0.00 to 0.30 V (common practice, no source). */
export const DRIFT_VOLTS: readonly [Volts, Volts] = [0, 0.3];

/** Volts that the meter clipped on as number `index` shows in a settled rig, red against black. */
export function meterShows(rig: Rig, index = 0): Volts {
  return rig.solver.voltsAcross(rig.network.attached[index]!);
}
