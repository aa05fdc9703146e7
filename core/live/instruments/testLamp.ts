import type { Volts } from "../../base/units.ts";
import { type Brightness, brightness, type TestLamp, testLamp } from "../../trade/instruments.ts";
import type { Attachment, Lead } from "../attachment.ts";
import type { Rig } from "../rig.ts";

/** A test lamp clipped between two places: a real load that may light, sag or move what it hangs on. */
export function lampOn(lamp: TestLamp, red: Lead, black: Lead, nominalVolts: Volts): Attachment {
  const { volts, amps } = testLamp(lamp, nominalVolts);
  return { red, black, law: { law: "lamp", ratedVolts: volts, ratedAmps: amps }, isMeter: false };
}

/** How the lamp clipped on as number `index` burns in a settled rig, either way round. */
export function burns(rig: Rig, index = 0): Brightness {
  return brightness(Math.abs(rig.solver.voltsAcross(rig.network.attached[index]!)), rig.circuit.nominalVolts);
}
