import type { Circuit, Condition } from "../circuit/circuit.ts";
import type { Fault } from "../live/fault.ts";
import { meterOn, meterShows } from "../live/instruments/meter.ts";
import { burns, lampOn } from "../live/instruments/testLamp.ts";
import { Rig } from "../live/rig.ts";
import { reach } from "../live/settle.ts";
import { lampOf } from "./candidates.ts";
import { heardOf, seenOf } from "./outcomes.ts";
import { leftIn, meltedIn, plugsWith } from "./predict.ts";
import type { Probe, Shows } from "./reading.ts";
import { isBySense } from "./step.ts";
import { restOf } from "./tries.ts";

/**
 * What a probe shows with faults planted (or none), solved with the instrument in the circuit and after the complaint
 * was tried once from good fuses. Gives the rig back for reuse.
 */
export function readWith(
  circuit: Circuit,
  faults: readonly Fault[],
  complaint: Condition | null,
  probe: Probe,
  givenUp?: Rig,
): { readonly shows: Shows; readonly rig: Rig } {
  const { red, black, instrument, lampTo, condition } = probe;
  const lamp = lampOf(instrument);
  const clipped = isBySense(instrument)
    ? []
    : [
        meterOn(red, black),
        ...(lampTo === null || lamp === null ? [] : [lampOn(lamp, red, lampTo, circuit.nominalVolts)]),
      ];
  const rig = new Rig(circuit, faults, clipped, givenUp);
  const melted = complaint === null ? [] : meltedIn(rig, complaint);
  if (instrument === "listen") {
    reach(rig, restOf(condition), undefined, melted);
    const before = rig.states.get(red);
    reach(rig, condition, undefined, melted);
    return { shows: { volts: null, word: heardOf(before, rig.states.get(red)) }, rig };
  }
  reach(rig, condition, undefined, melted);
  if (instrument === "look")
    return { shows: { volts: null, word: seenOf(red, rig.states, leftIn(rig), plugsWith(circuit, faults)) }, rig };
  return { shows: { volts: meterShows(rig), word: clipped.length > 1 ? burns(rig, 1) : null }, rig };
}
