import type { PartId } from "../base/ids.ts";
import type { Share, Volts } from "../base/units.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { ActRows } from "./actRows.ts";
import type { Candidate } from "./candidates.ts";
import { fedFirst, fuseOhmsOf } from "./inPlace.ts";
import { type Parted, partedFrom, without } from "./lampRows.ts";
import { type Column, columnWith } from "./outcomes.ts";
import { type Planted, shownInEach } from "./shown.ts";
import { gapAt } from "./spread.ts";
import type { Suspect } from "./step.ts";
import { MINUTES, type TestPoint, testPointsOf } from "./testPoint.ts";

/** A fuse is followed further where suspects of at least this share together drain through it (a guess). */
const WORTH: Share = 0.05;
const MOST_FUSES = 4;

/**
 * Of the rows that could be read those that wake nothing: a look where a control stands, its handle in sight, and the meter
 * alone, which beside the fuses costs the wait until the vehicle sleeps again.
 */
export function restful(circuit: Circuit, candidates: readonly Candidate[]): readonly Candidate[] {
  const isControl = (id: string): boolean =>
    circuit.parts.some((part) => part.id === id && kindOf(part.kind)?.role === "control");
  return candidates.flatMap((candidate) => {
    const { instrument, lampTo, fineness, at, minutes } = candidate;
    if (instrument === "look") return isControl(at.point) ? [{ ...candidate, at: { ...at, access: null } }] : [];
    const isMeter = instrument === "meter volts" && lampTo === null && fineness === "volts";
    return isMeter ? [{ ...candidate, minutes: minutes + MINUTES.asleepAgain }] : [];
  });
}

/**
 * Rows for a battery that goes flat: millivolts across every fuse where it sits, and across those that a suspect drains
 * through the same again while one thing after the other is parted behind it. Conditions are numbered from `first` on.
 */
export function drainRows(circuit: Circuit, suspects: readonly Suspect[], first: number): ActRows {
  const planted: readonly Planted[] = [{ id: "", faults: [] }, ...suspects];
  const conditions: Condition[] = [];
  const columns: Column[] = [];
  const found = circuit.parts
    .filter(({ kind }) => kind === "fuse")
    .flatMap(({ id }) => {
      const across = acrossOf(circuit, id);
      if (!across) return [];
      const drops = shownInEach(circuit, REST, planted, across, [REST])[0]!.map(({ volts }) => volts ?? 0);
      columns.push(columnWith(rowOf(circuit, across, null, 0), [drops.map(seen)]));
      return [{ across, guilty: suspects.filter((_, index) => isMore(drops[index + 1]!, drops[0]!)) }];
    });
  // A fuse that is pulled wakes modules, and tells no more than the millivolts across it.
  const isFuse = (id: string): boolean => circuit.parts.some((part) => part.id === id && part.kind === "fuse");
  for (const { across, guilty } of worthwhile(found)) {
    for (const parted of partedFrom(circuit, across.fuse).filter(({ out }) => !out.some(isFuse))) {
      const condition = without(REST, parted.out, parted.apart);
      const own = shownInEach(circuit, REST, guilty, across, [REST, condition]);
      if (!own[0]!.some(({ volts }, at) => isMore(volts ?? 0, own[1]![at]!.volts ?? 0))) continue;
      const shows = shownInEach(circuit, REST, planted, across, [condition])[0]!;
      const number = first + conditions.length;
      conditions.push(condition);
      columns.push(columnWith(rowOf(circuit, across, parted, number), [shows.map(({ volts }) => seen(volts ?? 0))]));
    }
  }
  return { conditions, columns };
}

const REST: Condition = {};

interface Across {
  readonly fuse: PartId;
  readonly at: TestPoint;
  readonly red: string;
  readonly black: string;
  readonly instrument: "meter volts";
  readonly lampTo: null;
}

/** The meter across a fuse's blades, red on the fed one; null where one of them is not to be touched. */
function acrossOf(circuit: Circuit, fuse: PartId): Across | null {
  const [red, black] = fedFirst(circuit, fuse, { out: [fuse] });
  const points = testPointsOf(circuit).filter(({ doNotProbe }) => doNotProbe === null);
  const at = points.find(({ point }) => point === red);
  const isBoth = at !== undefined && points.some(({ point }) => point === black);
  return isBoth ? { fuse, at, red, black, instrument: "meter volts", lampTo: null } : null;
}

interface Followed {
  readonly across: Across;
  readonly guilty: readonly Suspect[];
}

/** Fuses that the likeliest suspects drain through, heaviest first. */
function worthwhile(found: readonly Followed[]): readonly Followed[] {
  const massOf = (suspects: readonly Suspect[]): Share =>
    suspects.reduce((sum, { probability }) => sum + probability, 0);
  return found
    .filter(({ guilty }) => massOf(guilty) >= WORTH)
    .sort((one, other) => massOf(other.guilty) - massOf(one.guilty))
    .slice(0, MOST_FUSES);
}

function isMore(volts: Volts, than: Volts): boolean {
  return volts - than > gapAt(volts, "tenths");
}

function seen(volts: Volts): { readonly figure: Volts; readonly word: string } {
  return { figure: volts, word: "" };
}

function rowOf(circuit: Circuit, { fuse, at, black }: Across, parted: Parted | null, number: number): Candidate {
  return {
    at: parted === null ? at : { ...at, access: parted.access },
    alsoOpen: parted === null ? null : at.access,
    black,
    instrument: "meter volts",
    lampTo: null,
    sweepOf: null,
    conditions: [number],
    positions: [""],
    hands: 1,
    fineness: "tenths",
    ohms: fuseOhmsOf(circuit, fuse),
    minutes: at.minutes + (parted === null ? 0 : MINUTES.plugApart + MINUTES.asleepAgain),
  };
}
