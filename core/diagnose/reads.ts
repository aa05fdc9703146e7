import type { Circuit, Condition } from "../circuit/circuit.ts";
import type { Attachment } from "../live/attachment.ts";
import type { Fault } from "../live/fault.ts";
import { meterOn, meterShows } from "../live/instruments/meter.ts";
import { ohmsShown } from "../live/instruments/ohmmeter.ts";
import { burns, lampOn } from "../live/instruments/testLamp.ts";
import { Rig } from "../live/rig.ts";
import { reach } from "../live/settle.ts";
import { actShows } from "./actReads.ts";
import { lampOf } from "./candidates.ts";
import { clampShown } from "./otherUnits.ts";
import { heardOf, seenOf } from "./outcomes.ts";
import { leftIn, meltedIn, plugsWith } from "./predict.ts";
import { type Probe, type Shows, showing } from "./reading.ts";
import { scanSays } from "./scanTool.ts";
import { isAct, isBySense } from "./step.ts";
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
  const { shows, rig } = readInEach(circuit, faults, complaint, probe, [probe.condition], givenUp);
  return { shows: shows[0]!, rig };
}

/** The same with the leads left where they are, in each of several conditions: the complaint is tried only once. */
export function readInEach(
  circuit: Circuit,
  faults: readonly Fault[],
  complaint: Condition | null,
  leads: Omit<Probe, "condition">,
  conditions: readonly Condition[],
  givenUp?: Rig,
): { readonly shows: readonly Shows[]; readonly rig: Rig } {
  const { red, instrument } = leads;
  const clipped = clippedOn(circuit, leads);
  const rig = new Rig(circuit, faults, clipped, givenUp);
  const melted = complaint === null ? [] : meltedIn(rig, complaint);
  const shows = conditions.map((condition): Shows => {
    if (isAct(instrument))
      return { volts: null, word: actShows(circuit, { act: instrument, thing: red, faults, melted, condition }) };
    if (instrument === "listen") {
      reach(rig, restOf(condition), undefined, melted);
      const before = rig.states.get(red);
      reach(rig, condition, undefined, melted);
      return { volts: null, word: heardOf(before, rig.states.get(red)) };
    }
    reach(rig, condition, undefined, melted);
    if (instrument === "meter ohms") return showing(instrument, ohmsShown(rig, red, leads.black));
    if (instrument === "clamp") return showing(instrument, clampShown(circuit, rig, red));
    if (instrument === "scan tool") return { volts: null, word: scanSays(rig, red, faults) };
    if (instrument === "look")
      return { volts: null, word: seenOf(red, rig.states, leftIn(rig), plugsWith(circuit, faults)) };
    if (leads.lampTo === "black") return { volts: null, word: burns(rig) };
    return { volts: meterShows(rig), word: clipped.length > 1 ? burns(rig, 1) : null };
  });
  return { shows, rig };
}

/** Meter and lamp of a probe, the meter first; the lamp alone in a fuse's place, nothing where it is looked at or listened to. */
function clippedOn(
  { nominalVolts }: Circuit,
  { red, black, instrument, lampTo }: Omit<Probe, "condition">,
): readonly Attachment[] {
  if (isBySense(instrument) || instrument === "meter ohms" || instrument === "clamp") return [];
  const meter = meterOn(red, black);
  const lamp = lampOf(instrument);
  if (lampTo === null || lamp === null) return [meter];
  if (lampTo === "black") return [lampOn(lamp, red, black, nominalVolts)];
  return [meter, lampOn(lamp, red, lampTo, nominalVolts)];
}
