import type { Volts } from "../base/units.ts";
import { brightness, OPEN_FROM, testLamp } from "../trade/instruments.ts";
import { type Candidate, lampOf } from "./candidates.ts";
import { lampReads, meterReads, type Predicted } from "./predict.ts";
import type { Fineness } from "./spread.ts";
import { clusters } from "./weigh.ts";

/** A candidate row as every suspect would show it. Index 0 stands for the healthy circuit, the rest for suspects in order. */
export interface Column {
  readonly candidate: Candidate;
  /** Volts, ohms or amps by setting, then by circuit; 0 where nothing is measured. */
  readonly figures: readonly (readonly number[])[];
  /** Cluster number by setting, then by circuit. */
  readonly classes: readonly (readonly number[])[];
  /** How the lamp burns, or what is seen or heard, by setting, then by circuit; "" for the meter alone. */
  readonly words: readonly (readonly string[])[];
  /** Number of what each circuit shows in all settings together: circuits of one number are not parted by this row. */
  readonly labels: Uint8Array;
}

/** Outcomes that fit the number of a class. More are never seen: they are cut to the last. */
const MOST_LABELS = 255;

/** Number of a test point in the predictions, by its name. */
export type Numbers = ReadonlyMap<string, number>;

/** Reads a candidate row off the predictions of the healthy circuit and of every suspect. */
export function columnOf(
  candidate: Candidate,
  points: Numbers,
  all: readonly Predicted[],
  nominalVolts: Volts,
): Column {
  return columnWith(
    candidate,
    candidate.conditions.map((_, setting) =>
      all.map((predicted) => showsIn(candidate, points, predicted, setting, nominalVolts)),
    ),
  );
}

/** What is shown: volts, ohms or amps, 0 where nothing is measured, and the word, "" for the meter alone. */
interface Seen {
  readonly figure: number;
  readonly word: string;
}

/** A candidate row of which it is known what it shows, by setting, then by circuit. */
export function columnWith(candidate: Candidate, shows: readonly (readonly Seen[])[]): Column {
  const figures = shows.map((setting) => setting.map((each) => each.figure));
  const words = shows.map((setting) => setting.map((each) => each.word));
  const classes = figures.map((reads) => clusters(reads, candidate.fineness));
  return { candidate, figures, classes, words, labels: labelled(shows[0]?.length ?? 0, classes, words) };
}

/** What one circuit shows in one setting of a row. */
function showsIn(
  candidate: Candidate,
  points: Numbers,
  { shown, left, plugs }: Predicted,
  setting: number,
  nominalVolts: Volts,
): Seen {
  const { at, black, instrument, lampTo, conditions } = candidate;
  const here = shown[conditions[setting]!]!;
  if (instrument === "look") return { figure: 0, word: seenOf(at.point, here.states, left, plugs) };
  if (instrument === "listen") {
    const before = shown[conditions[0]!]!;
    return { figure: 0, word: setting === 0 ? "" : heardOf(before.states.get(at.point), here.states.get(at.point)) };
  }
  const red = points.get(at.point)!;
  if (instrument === "clamp") return { figure: here.amps[red]!, word: "" };
  const lamp = lampOf(instrument);
  if (lampTo !== null && lampTo !== "black" && lamp !== null) {
    const { across, pointVolts } = lampReads(here, red, lampTo, testLamp(lamp, nominalVolts));
    return { figure: pointVolts, word: brightness(across, nominalVolts) };
  }
  const other = points.get(black);
  return { figure: meterReads(here, red) - (other === undefined ? 0 : meterReads(here, other)), word: "" };
}

/** The word for a control that stands as it should. */
const AS_SET = "as set";

/** What a look shows: of a fuse "whole" or "blown", of a plug "sound" or what is not, of a control where it stands. */
export function seenOf(
  thing: string,
  states: ReadonlyMap<string, string>,
  left: Predicted["left"],
  plugs: Predicted["plugs"],
): string {
  const state = states.get(thing);
  if (state === "good") return "whole";
  if (state === "melted") return "blown";
  return plugs.get(thing) ?? left.get(thing) ?? AS_SET;
}

/** What is heard of a relay between two settings. */
export function heardOf(before: string | undefined, now: string | undefined): string {
  return before === now ? "silent" : "clicks";
}

function labelled(
  circuits: number,
  classes: readonly (readonly number[])[],
  words: readonly (readonly string[])[],
): Uint8Array {
  const numbers = new Map<string, number>();
  const labels = new Uint8Array(circuits);
  for (let circuit = 0; circuit < circuits; circuit++) {
    let spelt = "";
    for (let setting = 0; setting < classes.length; setting++)
      spelt += `${classes[setting]![circuit]}${words[setting]![circuit]}|`;
    const number = numbers.get(spelt) ?? Math.min(numbers.size, MOST_LABELS);
    numbers.set(spelt, number);
    labels[circuit] = number;
  }
  return labels;
}

/** Name of a reading beside the healthy one: low, sag, right or high. Sag is lower but still the greater part; ohms may be open. */
export function outcomeWord(
  read: number,
  healthy: number,
  isSameClass: boolean,
  fineness: Fineness,
): "low" | "sag" | "right" | "high" | "open" {
  if (isSameClass) return "right";
  if (fineness === "ohms" && read >= OPEN_FROM) return "open";
  if (read > healthy) return "high";
  return read > healthy / 2 ? "sag" : "low";
}
