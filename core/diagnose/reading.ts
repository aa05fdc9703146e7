import type { PartId } from "../base/ids.ts";
import type { Amps, Ohms, Volts } from "../base/units.ts";
import type { Condition } from "../circuit/circuit.ts";
import type { Lead } from "../live/attachment.ts";
import { conditionText } from "../live/condition.ts";
import type { Instrument, LampTo, Window } from "./step.ts";

/** Where and how something is read or looked at: both leads, the instrument, and how the circuit is set meanwhile. */
export interface Probe {
  /** Where the red lead goes; what is looked at or listened to is a part. */
  readonly red: Lead | PartId;
  readonly black: Lead;
  readonly instrument: Instrument;
  readonly lampTo: LampTo;
  readonly condition: Condition;
}

/** What one probe shows: volts of red against black, ohms or amps, how the lamp burns, or what is seen or heard. */
export interface Shows {
  /** Null where no volts were measured. */
  readonly volts: Volts | null;
  /** Of a meter on ohms alone; `OPEN_FROM` where it shows no figure. */
  readonly ohms?: Ohms;
  /** Of a clamp alone, without sign. */
  readonly amps?: Amps;
  /** "bright", "dim", "dark"; "clicks", "silent"; "whole", "blown"; a position; "works", "helps"; null where only the meter was read. */
  readonly word: string | null;
}

/** A value read on the vehicle. */
export interface Reading extends Probe, Shows {
  /** Doubted counts for little, struck for nothing; both stay on the list. */
  readonly standing: "taken" | "doubted" | "struck";
  /** When it was read, ISO 8601; null where nobody noted it. */
  readonly time: string | null;
}

/** Tells one probe from another: the same leads, instrument and condition give the same text. */
export function probeText({ red, black, instrument, lampTo, condition }: Probe): string {
  return `${red}/${black} ${instrument} ${lampTo ?? "-"} @ ${conditionText(condition)}`;
}

/** Whether what was read lies in every window, one a setting; a window without a word asks for none. */
export function fitsIn(windows: readonly Window[], shows: readonly Shows[]): boolean {
  return windows.every(({ low, high, word }, setting) => {
    const read = shows[setting]!;
    const figure = figureOf(read);
    const isBetween = figure === null || (figure >= low && figure <= high);
    return isBetween && (read.word === null || word === "" || read.word === word);
  });
}

/** A value just read, with nothing against it. */
export function readingOf({ red, black, instrument, lampTo, condition }: Probe, shows: Shows): Reading {
  return { red, black, instrument, lampTo, condition, ...shows, standing: "taken", time: null };
}

/** The figure read, in the unit of its instrument: volts, ohms or amps; null where nothing was measured. */
export function figureOf({ volts, ohms, amps }: Shows): number | null {
  return volts ?? ohms ?? amps ?? null;
}

/** A figure as its instrument shows it, with a word or none. */
export function showing(instrument: Instrument, figure: number, word: string | null = null): Shows {
  if (instrument === "meter ohms") return { volts: null, ohms: figure, word };
  return instrument === "clamp" ? { volts: null, amps: figure, word } : { volts: figure, word };
}

/** All that a reading can be taken with. */
export const INSTRUMENTS = [
  "meter volts",
  "meter ohms",
  "clamp",
  "4 A lamp",
  "0.25 A lamp",
  "look",
  "listen",
  "scan tool",
  "fed direct",
  "fed loose",
  "like relay",
] as const satisfies readonly Instrument[];
const LAMPS_TO: readonly unknown[] = ["battery +", "battery -", "black", null] satisfies LampTo[];
const STANDINGS: readonly unknown[] = ["taken", "doubted", "struck"];

/** Whether a value from outside has the shape of a reading; whether it fits a circuit is another question. */
export function isReading(value: unknown): value is Reading {
  if (typeof value !== "object" || value === null) return false;
  const { red, black, instrument, lampTo, condition, volts, ohms, amps, word, standing, time } = value as Record<
    string,
    unknown
  >;
  return (
    typeof red === "string" &&
    typeof black === "string" &&
    INSTRUMENTS.some((each) => each === instrument) &&
    LAMPS_TO.includes(lampTo) &&
    typeof condition === "object" &&
    condition !== null &&
    (volts === null || Number.isFinite(volts)) &&
    [ohms, amps].every((figure) => figure === undefined || Number.isFinite(figure)) &&
    (word === null || typeof word === "string") &&
    STANDINGS.includes(standing) &&
    (time === null || typeof time === "string")
  );
}
