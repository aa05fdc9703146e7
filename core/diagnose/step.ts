import type { ConnectorId, PointId } from "../base/ids.ts";
import type { Minutes, Share } from "../base/units.ts";
import type { Condition } from "../circuit/circuit.ts";
import type { Lead } from "../live/attachment.ts";
import type { Fault } from "../live/fault.ts";

/** A fault with its probability. */
export interface Suspect {
  /** The fault's text, `X5-6:corroded=20`. */
  readonly id: string;
  readonly fault: Fault;
  /** In words: "X5-6 corroded, 20 ohm added". */
  readonly title: string;
  /** Suspects mended by the same repair of the same thing are one group: entropy is taken over these. */
  readonly repairGroup: string;
  readonly probability: Share;
}

/** What a row is read with. A lamp hangs from the red point to `lampTo` as a real load while the meter reads. */
export type Instrument = "meter volts" | "4 A lamp" | "0.25 A lamp";

/** What a good circuit shows: a range in volts, and for a lamp row how it burns. */
export interface Expected {
  readonly low: number;
  readonly high: number;
  readonly unit: "V";
  readonly lamp: "bright" | "dim" | "dark" | null;
}

/** One reading to take in one setting. A sweep has one for every position of its control. */
export interface Setting {
  readonly condition: Condition;
  /** Position of the swept control; "" where the row is no sweep. */
  readonly position: string;
  readonly expect: Expected;
}

/** What a reading would say: a word, its limit, and the suspects it leaves, likeliest first. */
export interface OutcomeOf {
  /** low, sag, right or high; in a sweep the pattern in words. */
  readonly word: string;
  readonly limit: string;
  readonly probability: Share;
  readonly leaves: readonly Suspect[];
}

/** One row of the probe order. */
export interface Step {
  readonly number: number;
  readonly point: PointId;
  readonly black: Lead;
  readonly connector: ConnectorId | null;
  readonly cavity: string | null;
  /** Insulation colour of the wire there, as the circuit writes it. */
  readonly colour: string | null;
  readonly instrument: Instrument;
  /** Where the lamp's other clip goes; null for a plain meter row. */
  readonly lampTo: "battery +" | "battery -" | null;
  /** Control whose positions are swept, or null. */
  readonly sweepOf: string | null;
  readonly settings: readonly Setting[];
  /** Access group that must be open, or null where the point lies free. */
  readonly access: string | null;
  /** Minutes this row adds: probe, throws, and trim not yet open. */
  readonly minutes: Minutes;
  readonly hands: 1 | 2;
  readonly why: string;
  readonly cautions: readonly string[];
  readonly outcomes: readonly OutcomeOf[];
}

/** The probe order for a complaint: what is suspected, what works clears, and the rows. */
export interface ProbeOrder {
  /** The failing check and what it does: "Middle vent opens: dead". */
  readonly complaint: string;
  readonly suspects: readonly Suspect[];
  readonly cleared: readonly Suspect[];
  readonly steps: readonly Step[];
  /** Minutes of all rows together, trim opened once. */
  readonly minutes: Minutes;
}
