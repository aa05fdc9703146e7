import type { ConnectorId, PointId } from "../base/ids.ts";
import type { Minutes, Ohms, Share } from "../base/units.ts";
import type { Condition } from "../circuit/circuit.ts";
import type { Lead } from "../live/attachment.ts";
import type { Fault } from "../live/fault.ts";

/** What can be wrong, with its probability. */
export interface Suspect {
  /** The faults' text, `X5-6:corroded=20`; several are joined by "+". */
  readonly id: string;
  /** One fault, or several with one cause. */
  readonly faults: readonly Fault[];
  /** In words: "X5-6 corroded, 20 ohm added". */
  readonly title: string;
  /** Suspects mended by the same repair of the same thing are one group: entropy is taken over these. */
  readonly repairGroup: string;
  readonly probability: Share;
  /** Why it weighs otherwise than guessed, in sentences: found before, or a factor that somebody set. */
  readonly notes: readonly string[];
}

/**
 * What is done to a part to see what it does then: a load is fed by jumpers with its plug apart, or also off the mechanism
 * it drives; a relay is swapped for a like one.
 */
export type Act = "fed direct" | "fed loose" | "like relay";

/**
 * What a row is read with. Ohms are read where nothing is fed, a clamp goes round the one wire at a point. A lamp hangs from the red point to `lampTo` as a real load while the meter reads. A part is
 * looked at, listened to while a control is thrown, or acted on.
 */
export type Instrument = "meter volts" | "meter ohms" | "clamp" | "4 A lamp" | "0.25 A lamp" | Sense;

/** What is told by eye, by ear, by a module itself, or by what a part does when it is acted on: nothing is measured. */
export type Sense = "look" | "listen" | "scan tool" | Act;

/** Where a lamp's other clip goes: a post, or the black lead's point, where it stands in for a fuse; null without lamp. */
export type LampTo = "battery +" | "battery -" | "black" | null;

const ACTS: readonly Instrument[] = ["fed direct", "fed loose", "like relay"] satisfies Act[];

/** Whether a part is acted on, and what it does then is seen. */
export function isAct(instrument: Instrument): instrument is Act {
  return ACTS.includes(instrument);
}

/** Whether nothing is measured: a part is looked at, listened to, asked about or acted on, and the answer is a word. */
export function isBySense(instrument: Instrument): instrument is Sense {
  return instrument === "look" || instrument === "listen" || instrument === "scan tool" || isAct(instrument);
}

/** Unit of a figure as it is written. */
export type Unit = "V" | "mV" | "ohm" | "A";

/** What a good circuit shows: a range in its unit, for a lamp how it burns, for a look or a sound its word. */
export interface Expected {
  readonly low: number;
  readonly high: number;
  readonly unit: Unit;
  readonly lamp: "bright" | "dim" | "dark" | null;
  /** What is seen or heard: "whole", "clicks", a position; null where something is measured. */
  readonly word: string | null;
}

/** One reading to take in one setting. A sweep has one for every position of its control. */
export interface Setting {
  readonly condition: Condition;
  /** Position of the swept control; "" where the row is no sweep. */
  readonly position: string;
  readonly expect: Expected;
}

/** Between what and what a reading lies for an outcome: volts, ohms or amps as its instrument reads; and the word it comes with, if any. */
export interface Window {
  readonly low: number;
  readonly high: number;
  readonly word: string;
}

/** What a reading would say: a word, its limit, and the suspects it leaves, likeliest first. */
export interface OutcomeOf {
  /** low, sag, right or high; in a sweep the pattern in words; of a look what is seen. */
  readonly word: string;
  readonly limit: string;
  readonly probability: Share;
  readonly leaves: readonly Suspect[];
  /** One for each setting: the readings that mean this. */
  readonly windows: readonly Window[];
}

/** One row of the probe order. */
export interface Step {
  readonly number: number;
  /** Where red goes; of a look or a sound the part. */
  readonly point: PointId;
  readonly black: Lead;
  readonly connector: ConnectorId | null;
  readonly cavity: string | null;
  /** Insulation colour of the wire there, as the circuit writes it. */
  readonly colour: string | null;
  readonly instrument: Instrument;
  readonly lampTo: LampTo;
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
  /** Cold ohms between the leads where the millivolts across a fuse tell milliamps; null elsewhere. */
  readonly ohms: Ohms | null;
}

/** Suspects that something ruled out. */
export interface Cleared {
  readonly suspect: Suspect;
  /** Number of the reading that ruled it out, from 1; 0 where what works did. */
  readonly by: number;
}

/** How far the search is. */
export type Progress =
  /** Go on with the rows. */
  | "open"
  /** One repair is as good as certain. */
  | "certain"
  /** No row that is left parts the suspects. */
  | "tied"
  /** More proof costs more than it can save. */
  | "order-now"
  /** Nothing in the drawing brings the complaint about. */
  | "none";

/** Readings, by number from 1, that cannot be right together with one fault: two, or one that fits none of the others. */
export type Clash = readonly number[];

/** The probe order for a complaint: what is suspected, what is cleared, and the rows. */
export interface ProbeOrder {
  /** The failing check and what it does: "Middle vent opens: dead". */
  readonly complaint: string;
  /** Likeliest first; with `elsewhere` and `cleared` they add up to 1. */
  readonly suspects: readonly Suspect[];
  readonly cleared: readonly Suspect[];
  /** The same as `cleared`, with what ruled each out. */
  readonly clearedBy: readonly Cleared[];
  /** Share of what is not on the drawing. */
  readonly elsewhere: Share;
  readonly progress: Progress;
  /** What to do and to heed before the first row, in sentences. */
  readonly before: readonly string[];
  /** Ids of access groups that are off before the first row, and whose minutes no row counts. */
  readonly beforehand: readonly string[];
  /** Minutes still expected, if the next row is chosen anew after every reading. */
  readonly expectedMinutes: Minutes;
  /** For each row, minutes more that are expected in all if it is read now in place of the first; empty where nobody asked. */
  readonly detours: readonly Minutes[];
  readonly clashes: readonly Clash[];
  /** Pairs of one cause, by title, that would explain the readings that clash. */
  readonly jointly: readonly string[];
  readonly steps: readonly Step[];
  /** Minutes of all rows together, trim opened once. */
  readonly minutes: Minutes;
}
