import type { WireId } from "../../base/ids.ts";
import type { Amps, Volts } from "../../base/units.ts";
import type { Circuit } from "../../circuit/circuit.ts";
import { pointAt } from "../../circuit/points.ts";
import { JUMPER_FUSE, TEST_LAMPS } from "../../trade/instruments.ts";
import type { Attachment, Lead } from "../attachment.ts";
import { meterOn } from "./meter.ts";
import { lampOn } from "./testLamp.ts";

/** Instruments of the bench that have two leads, in the order in which a person reaches for them. */
export const TWO_LEADS = ["voltmeter", "small-lamp", "heavy-lamp", "ohmmeter", "jumper", "stand-in"] as const;
/** An instrument of two leads. */
export type TwoLeads = (typeof TWO_LEADS)[number];
/** Every instrument of the bench; a clamp goes round a wire and has no leads. */
export const INSTRUMENTS = [...TWO_LEADS, "clamp"] as const;
/** An instrument of the bench. */
export type InstrumentName = (typeof INSTRUMENTS)[number];

/** What a path through an instrument calls it. */
export const CLIPPED_NAMES = {
  "small-lamp": "the test lamp",
  "heavy-lamp": "the load lamp",
  jumper: "the jumper lead",
  "stand-in": "the stand-in load",
} as const satisfies Partial<Record<InstrumentName, string>>;

/** Amps that can be chosen: of a jumper's own fuse, and of a stand-in load at nominal volts. Guesses but for the 5 A. */
export const AMPS = {
  jumper: { usual: JUMPER_FUSE.amps, least: 0.5, most: 40 },
  "stand-in": { usual: TEST_LAMPS.heavy.amps, least: 0.05, most: 60 },
} as const satisfies Partial<Record<InstrumentName, Readonly<Record<"usual" | "least" | "most", Amps>>>>;

/** An instrument on the bench and where it is clipped; null where a lead hangs free. */
export type Clipped = LeadsClipped | ClampClipped;

/** One with two leads. */
export interface LeadsClipped {
  /** Tells it from the others on the bench: "1", "2". */
  readonly id: string;
  readonly instrument: TwoLeads;
  readonly red: Lead | null;
  readonly black: Lead | null;
  /** Of a jumper's own fuse, or of a stand-in load; absent for the others. */
  readonly amps?: Amps;
}

/** A clamp round a wire. */
export interface ClampClipped {
  readonly id: string;
  readonly instrument: "clamp";
  readonly around: WireId | null;
}

/** Whether it has amps that can be chosen. */
export function hasAmps(instrument: InstrumentName): instrument is keyof typeof AMPS {
  return Object.hasOwn(AMPS, instrument);
}

/** An instrument as it comes to the bench, its black lead on battery - where that is where it usually goes. */
export function freshInstrument(id: string, instrument: InstrumentName): Clipped {
  if (instrument === "clamp") return { id, instrument, around: null };
  const black = instrument === "voltmeter" || instrument.endsWith("lamp") ? "battery -" : null;
  return { id, instrument, red: null, black, ...(hasAmps(instrument) && { amps: AMPS[instrument].usual }) };
}

/**
 * What instruments do to the circuit, in their order, each with the id of the one that does: a lead that hangs free, a clamp
 * and an ohmmeter do nothing.
 */
export function attachmentsOf(
  clipped: readonly Clipped[],
  nominalVolts: Volts,
): readonly { readonly id: string; readonly attachment: Attachment }[] {
  return clipped.flatMap((each) => {
    const attachment = attachmentOf(each, nominalVolts);
    return attachment ? [{ id: each.id, attachment }] : [];
  });
}

function attachmentOf(each: Clipped, nominalVolts: Volts): Attachment | null {
  if (each.instrument === "clamp" || each.red === null || each.black === null) return null;
  const { red, black } = each;
  switch (each.instrument) {
    case "voltmeter":
      return meterOn(red, black);
    case "small-lamp":
      return { ...lampOn("small", red, black, nominalVolts), name: CLIPPED_NAMES["small-lamp"] };
    case "heavy-lamp":
      return { ...lampOn("heavy", red, black, nominalVolts), name: CLIPPED_NAMES["heavy-lamp"] };
    case "ohmmeter":
      return null;
    case "jumper":
      return { red, black, part: { id: fuseOf(each.id), kind: "jumper", settings: { amps: each.amps ?? 0 } } };
    case "stand-in": {
      const ratedAmps = each.amps ?? AMPS["stand-in"].usual;
      const law = { law: "lamp", ratedVolts: nominalVolts, ratedAmps } as const;
      return { red, black, law, name: CLIPPED_NAMES["stand-in"], isMeter: false };
    }
  }
}

/** Under what name live state keeps whether a jumper's fuse is melted: none that a part of the circuit can have. */
export function fuseOf(id: string): string {
  return `~${id}`;
}

/** Whether a name in the states of parts is that of an instrument's fuse. */
export function isFuseOfInstrument(name: string): boolean {
  return name.startsWith("~");
}

/** Whether a lead can be clipped to a place of this circuit. */
export function isLead(circuit: Circuit, place: string): place is Lead {
  return place === "battery +" || place === "battery -" || pointAt(circuit, place) !== undefined;
}
