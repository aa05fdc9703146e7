import { remember } from "../base/memo.ts";
import type { Minutes } from "../base/units.ts";
import type { AccessGroup, Circuit, Condition } from "../circuit/circuit.ts";
import { conditionText } from "../live/condition.ts";
import { CLAMP_FROM } from "../trade/instruments.ts";
import { type ActRows, actRows } from "./actRows.ts";
import { openedBeforehand } from "./beforehand.ts";
import { type Candidate, candidatesFor } from "./candidates.ts";
import { drainRows, restful } from "./drainRows.ts";
import { lampRows } from "./lampRows.ts";
import { ohmRows } from "./ohmRows.ts";
import { type Column, columnOf } from "./outcomes.ts";
import { MOST_TRIM, NOWHERE, type ProbeChoice, type Problem, type Stand } from "./plan/problem.ts";
import { type Predicted, predictor } from "./predict.ts";
import type { Reading } from "./reading.ts";
import { scanRows } from "./scanRows.ts";
import type { Fineness } from "./spread.ts";
import { isBySense, type LampTo, type Suspect } from "./step.ts";
import { groupsToOpen, MINUTES, minutesToOpen, placeOf, reachOf, testPointsOf } from "./testPoint.ts";
import { complaintNumber, type Tries } from "./tries.ts";

/** The rows that could be read, and the same as the planner's numbers: row and probe have the same number. */
export interface Rows {
  /** What the settings of the rows are numbered by: the conditions tried, then those of the acts. */
  readonly conditions: readonly Condition[];
  readonly columns: readonly Column[];
  readonly problem: Problem;
  /** Trim in front of the rows: number n is bit n of the problem's trim. */
  readonly trim: readonly AccessGroup[];
  /** How things stand after the readings taken so far. */
  readonly stand: Stand;
}

/**
 * Every row that tells anything of these suspects, as each of them would show it. A lamp is hung only where a good
 * circuit lights it, and a drop read across a fuse only where a good circuit has one, the way round that it is positive.
 */
export function rowsFor(
  circuit: Circuit,
  complaint: Condition,
  suspects: readonly Suspect[],
  tries: Tries,
  readings: readonly Reading[],
): Rows {
  const points = testPointsOf(circuit);
  const numbers = new Map(points.map(({ point }, index) => [point, index]));
  const all = predictAll(circuit, complaint, suspects, tries);
  const first = tries.conditions.length;
  const lamps = tries.isAsleep
    ? drainRows(circuit, suspects, first)
    : lampRows(circuit, complaint, suspects, all, tries);
  const acts = tries.isAsleep ? NO_ACTS : actRows(circuit, complaint, suspects, first + lamps.conditions.length);
  const beforeOhms = first + lamps.conditions.length + acts.conditions.length;
  const ohms = tries.isAsleep ? NO_ACTS : ohmRows(circuit, complaint, suspects, beforeOhms);
  const offered = candidatesFor(circuit, tries);
  const read = (tries.isAsleep ? restful(circuit, offered) : offered).map((candidate) =>
    columnOf(candidate, numbers, all, circuit.nominalVolts),
  );
  const columns = [
    ...read,
    ...lamps.columns,
    ...acts.columns,
    ...ohms.columns,
    ...scanRows(circuit, complaint, suspects, complaintNumber(tries, complaint)),
  ]
    .filter(({ labels }) => labels.some((label) => label !== labels[0]))
    .filter(({ candidate, words }) => !isLampToPost(candidate) || words[0]![0] === "bright")
    .filter(({ candidate, figures }) => candidate.fineness !== "millivolts" || figures.some((reads) => reads[0]! > 0))
    .filter(({ candidate, figures }) => candidate.fineness !== "amps" || figures[0]![0]! >= CLAMP_FROM);
  const trim = trimOf(circuit, columns);
  return {
    columns,
    conditions: [...tries.conditions, ...lamps.conditions, ...acts.conditions, ...ohms.conditions],
    problem: {
      weights: Float64Array.from(suspects, ({ probability }) => probability),
      repairs: numbered(suspects.map(({ repairGroup }) => repairGroup)),
      probes: columns.map(({ candidate, labels }) => choiceOf(circuit, candidate, labels.slice(1), trim)),
      trimMinutes: trim.map(({ minutes }) => minutes),
      changePlace: MINUTES.changePlace,
      changeMode: MINUTES.meterMode,
    },
    trim,
    stand: standAfter(circuit, readings, trim, tries.isAsleep ? openedBeforehand(circuit) : []),
  };
}

/** Where the vehicle sleeps, nothing is fed, swapped or taken off. */
const NO_ACTS: ActRows = { conditions: [], columns: [] };

function isLampToPost({ lampTo }: Candidate): boolean {
  return lampTo === "battery +" || lampTo === "battery -";
}

/** Predictions by complaint and suspect: with every reading the same suspects are asked for again, only fewer. */
const predictedFor = remember((_: Circuit) => new Map<string, Map<string, Predicted>>());

/** What the healthy circuit and every suspect show in all conditions tried. */
function predictAll(
  circuit: Circuit,
  complaint: Condition,
  suspects: readonly Suspect[],
  { conditions }: Tries,
): readonly Predicted[] {
  const key = [complaint, ...conditions].map(conditionText).join(" | ");
  const known = predictedFor(circuit).get(key) ?? new Map<string, Predicted>();
  predictedFor(circuit).set(key, known);
  const points = testPointsOf(circuit);
  let shownWith: ReturnType<typeof predictor> | undefined;
  return [{ id: "", faults: [] }, ...suspects].map(({ id, faults }) => {
    const before = known.get(id);
    if (before) return before;
    shownWith ??= predictor(circuit, complaint, conditions, points);
    const found = shownWith(faults);
    known.set(id, found);
    return found;
  });
}

function choiceOf(
  circuit: Circuit,
  { at, alsoOpen, instrument, lampTo, minutes, fineness }: Candidate,
  classes: Uint8Array,
  trim: readonly AccessGroup[],
): ProbeChoice {
  return {
    classes,
    minutes: minutes + beyond(circuit, at.access, trim),
    trim: bitsOf(circuit, at.access, trim) | bitsOf(circuit, alsoOpen, trim),
    place: placeNumber(circuit, at.access),
    mode: isBySense(instrument) ? NOWHERE : modeOf(fineness, lampTo),
  };
}

/** Number of what the meter is set to: from one to another, or to a lamp in a fuse's place, takes a moment. */
const MODES = { volts: 0, millivolts: 1, tenths: 1, ohms: 3, amps: 4 } as const satisfies Record<Fineness, number>;

function modeOf(fineness: Fineness, lampTo: LampTo): number {
  return lampTo === "black" ? 2 : MODES[fineness];
}

/** Trim in front of the rows, as many pieces as the planner can number. */
function trimOf(circuit: Circuit, columns: readonly Column[]): readonly AccessGroup[] {
  const pieces = new Set<AccessGroup>();
  for (const { candidate } of columns)
    for (const access of [candidate.at.access, candidate.alsoOpen])
      if (access !== null) for (const piece of groupsToOpen(circuit, access)) pieces.add(piece);
  return [...pieces].slice(0, MOST_TRIM);
}

function bitsOf(circuit: Circuit, access: string | null, trim: readonly AccessGroup[]): number {
  if (access === null) return 0;
  return groupsToOpen(circuit, access).reduce((bits, piece) => {
    const number = trim.indexOf(piece);
    return number < 0 ? bits : bits | (1 << number);
  }, 0);
}

/** Minutes of trim beyond what can be numbered: charged every time. */
function beyond(circuit: Circuit, access: string | null, trim: readonly AccessGroup[]): Minutes {
  const numbered = new Set(trim.map(({ id }) => id));
  return minutesToOpen(circuit, access, numbered);
}

/** Number of the place behind an access group, 0 where it lies free. */
export function placeNumber(circuit: Circuit, access: string | null): number {
  return access === null ? 0 : 1 + circuit.access.findIndex(({ id }) => id === access);
}

function standAfter(
  circuit: Circuit,
  readings: readonly Reading[],
  trim: readonly AccessGroup[],
  beforehand: readonly AccessGroup[],
): Stand {
  const points = testPointsOf(circuit);
  const open = trim.reduce((bits, piece, number) => (beforehand.includes(piece) ? bits | (1 << number) : bits), 0);
  let stand: Stand = { open, place: NOWHERE, mode: NOWHERE };
  for (const { red, instrument, condition } of readings) {
    const at = isBySense(instrument) ? placeOf(circuit, red) : points.find(({ point }) => point === red);
    if (!at) continue;
    const parted = (condition.apart ?? []).map((plug) => bitsOf(circuit, reachOf(circuit, plug).access ?? null, trim));
    stand = {
      open: parted.reduce((open, bits) => open | bits, stand.open | bitsOf(circuit, at.access, trim)),
      place: placeNumber(circuit, at.access),
      mode: NOWHERE,
    };
  }
  return stand;
}

function numbered(names: readonly string[]): Uint16Array {
  const numbers = new Map<string, number>();
  return Uint16Array.from(names, (name) => {
    const number = numbers.get(name) ?? numbers.size;
    numbers.set(name, number);
    return number;
  });
}
