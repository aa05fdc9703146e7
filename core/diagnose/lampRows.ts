import type { ConnectorId, PartId } from "../base/ids.ts";
import type { Share } from "../base/units.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import type { ActRows } from "./actRows.ts";
import { type Candidate, handsFor } from "./candidates.ts";
import { fedFirst, lampForFuse } from "./inPlace.ts";
import { type Column, columnWith } from "./outcomes.ts";
import type { Predicted } from "./predict.ts";
import type { Probe } from "./reading.ts";
import { type Planted, shownInEach } from "./shown.ts";
import type { Suspect } from "./step.ts";
import { MINUTES, reachOf, type TestPoint, testPointsOf } from "./testPoint.ts";
import { complaintNumber, type Tries } from "./tries.ts";

/** Before any lamp is put in a fuse's place, suspects that melt one weigh together at least this (a guess). */
const MOSTLY: Share = 0.5;
/** The same for each fuse by itself. */
const WORTH: Share = 0.1;
/** Fuses that a lamp is tried in, those first that most of the suspects melt. */
const MOST_FUSES = 3;

/**
 * The lamp in a fuse's place: it passes no more than its own amps, so that a short may stay while what hangs on the fuse
 * is parted, thing by thing, until the lamp goes out. One row for each position tried, and one for each thing parted
 * where that changes the lamp for anything that melts the fuse.
 */
export function lampRows(
  circuit: Circuit,
  complaint: Condition,
  suspects: readonly Suspect[],
  predicted: readonly Predicted[],
  tries: Tries,
): ActRows {
  const planted: readonly Planted[] = [{ id: "", faults: [] }, ...suspects];
  const conditions: Condition[] = [];
  const columns: Column[] = [];
  for (const { fuse, melting } of meltedFuses(suspects, predicted)) {
    const lamped = lampAcross(circuit, fuse, complaint);
    if (!lamped) continue;
    const settings = [
      ...tries.conditions.map((condition, index) => ({ condition: without(condition, [fuse]), index, parted: null })),
      ...settingsParted(
        circuit,
        complaint,
        fuse,
        lamped,
        melting.map((index) => suspects[index]!),
        tries,
      ),
    ];
    const asked = settings.map(({ condition }) => condition);
    const shows = shownInEach(circuit, complaint, planted, leadsOf(lamped), asked);
    settings.forEach(({ condition, index, parted }, setting) => {
      const number = tries.conditions.length + conditions.length;
      conditions.push(condition);
      const candidate = candidateFor(circuit, lamped, parted, index, number, tries);
      // The lamp alone is looked at.
      columns.push(columnWith(candidate, [shows[setting]!.map(({ word }) => ({ figure: 0, word: word ?? "" }))]));
    });
  }
  return { conditions, columns };
}

/** A setting with the lamp in: by number the position that is tried, and what is parted meanwhile. */
interface Setting {
  readonly condition: Condition;
  readonly index: number;
  readonly parted: Parted | null;
}

/** As complained of, with each thing parted that changes the lamp for any of those that melt the fuse. */
function settingsParted(
  circuit: Circuit,
  complaint: Condition,
  fuse: PartId,
  lamped: Across,
  guilty: readonly Planted[],
  tries: Tries,
): readonly Setting[] {
  const index = complaintNumber(tries, complaint);
  const all = partedFrom(circuit, fuse).map((parted) => ({
    condition: without(complaint, [fuse, ...parted.out], parted.apart),
    index,
    parted,
  }));
  const asked = [without(complaint, [fuse]), ...all.map(({ condition }) => condition)];
  const [whole, ...shows] = shownInEach(circuit, complaint, guilty, leadsOf(lamped), asked);
  return all.filter((_, place) => shows[place]!.some(({ word }, suspect) => word !== whole![suspect]!.word));
}

function candidateFor(
  circuit: Circuit,
  { at, black, instrument }: Across,
  parted: Parted | null,
  index: number,
  number: number,
  tries: Tries,
): Candidate {
  const hands = handsFor(circuit, at, tries, index, false);
  const parting = parted === null ? 0 : MINUTES.plugApart;
  const second = hands === 2 ? MINUTES.secondPerson : 0;
  return {
    at: parted === null ? at : { ...at, access: parted.access },
    alsoOpen: parted === null ? null : at.access,
    black,
    instrument,
    lampTo: "black",
    sweepOf: null,
    conditions: [number],
    positions: [tries.positions[index]!],
    hands,
    fineness: "volts",
    minutes: MINUTES.lamp + MINUTES.throwControl + parting + second,
  };
}

interface Melted {
  readonly fuse: PartId;
  /** Suspects that melt it, by number. */
  readonly melting: readonly number[];
}

/** Fuses that the suspects melt, those first that the likeliest of them do. Index 0 of the predictions is no suspect. */
function meltedFuses(suspects: readonly Suspect[], predicted: readonly Predicted[]): readonly Melted[] {
  const massOf = (numbers: readonly number[]): number =>
    numbers.reduce((sum, index) => sum + suspects[index]!.probability, 0);
  const found = new Map<PartId, number[]>();
  suspects.forEach((_, index) => {
    for (const [part, state] of predicted[index + 1]!.shown[0]!.states)
      if (state === "melted") found.set(part, [...(found.get(part) ?? []), index]);
  });
  const total = massOf([...suspects.keys()]);
  if (massOf([...new Set([...found.values()].flat())]) < MOSTLY * total) return [];
  return [...found]
    .map(([fuse, melting]) => ({ fuse, melting, mass: massOf(melting) }))
    .filter(({ mass }) => mass >= WORTH * total)
    .sort((one, other) => other.mass - one.mass)
    .slice(0, MOST_FUSES);
}

interface Across {
  readonly at: TestPoint;
  readonly black: string;
  readonly instrument: "4 A lamp" | "0.25 A lamp";
}

/** The lamp across a fuse's blades, red on the fed one; null where one of them is not to be touched. */
function lampAcross(circuit: Circuit, fuse: PartId, complaint: Condition): Across | null {
  const [fed, other] = fedFirst(circuit, fuse, without(complaint, [fuse])).map((blade) =>
    testPointsOf(circuit).find(({ point, doNotProbe }) => point === blade && doNotProbe === null),
  );
  return fed && other ? { at: fed, black: other.point, instrument: lampForFuse(circuit, fuse) } : null;
}

function leadsOf({ at, black, instrument }: Across): Omit<Probe, "condition"> {
  return { red: at.point, black, instrument, lampTo: "black" };
}

/** Something that is pulled apart or out while the lamp is in the fuse's place. */
export interface Parted {
  readonly apart: readonly ConnectorId[];
  readonly out: readonly PartId[];
  readonly access: string | null;
}

/** All that can be parted from a fuse: plugs, the other fuses, relays in their sockets. */
export function partedFrom(circuit: Circuit, fuse: PartId): readonly Parted[] {
  const open = (id: string): boolean => reachOf(circuit, id).doNotProbe === undefined;
  const access = (id: string): string | null => reachOf(circuit, id).access ?? null;
  return [
    ...circuit.connectors.filter(({ id }) => open(id)).map(({ id }) => ({ apart: [id], out: [], access: access(id) })),
    ...circuit.parts
      .filter(({ id, kind }) => id !== fuse && (kind === "fuse" || kind === "relay") && open(id))
      .map(({ id }) => ({ apart: [], out: [id], access: access(id) })),
  ];
}

/** A condition with more parts out and plugs apart. */
export function without(condition: Condition, out: readonly PartId[], apart: readonly ConnectorId[] = []): Condition {
  const unplugged = [...new Set([...(condition.apart ?? []), ...apart])];
  return {
    ...condition,
    ...(unplugged.length > 0 && { apart: unplugged }),
    out: [...new Set([...(condition.out ?? []), ...out])],
  };
}
