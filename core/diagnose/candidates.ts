import type { ConnectorId, PartId } from "../base/ids.ts";
import type { Minutes, Ohms } from "../base/units.ts";
import type { Circuit, Condition, Connector } from "../circuit/circuit.ts";
import { controlAt, springsBack } from "../circuit/points.ts";
import type { Lead } from "../live/attachment.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { Part } from "../parts/kind.ts";
import type { TestLamp } from "../trade/instruments.ts";
import { bladesOf } from "./inPlace.ts";
import { takesClamp } from "./otherUnits.ts";
import type { Probe } from "./reading.ts";
import type { Fineness } from "./spread.ts";
import { type Instrument, isBySense, type LampTo } from "./step.ts";
import { MINUTES, placeOf, reachOf, type TestPoint, testPointsOf } from "./testPoint.ts";
import type { Tries } from "./tries.ts";

/** A row that could be read, before anything is known of what it would tell. */
export interface Candidate {
  /** Where red goes; of a look or a sound where the part is. */
  readonly at: TestPoint;
  readonly black: Lead;
  readonly instrument: Instrument;
  readonly lampTo: LampTo;
  readonly sweepOf: string | null;
  /** Indices into the conditions of the rows, one for each setting: those tried, then those of the acts. */
  readonly conditions: readonly number[];
  readonly positions: readonly string[];
  readonly hands: 1 | 2;
  readonly fineness: Fineness;
  /** Cold ohms of the fuse across which milliamps are read. */
  readonly ohms?: Ohms;
  /** Trim that must be off beside that of the place, or null. */
  readonly alsoOpen: string | null;
  /** Minutes of the row by itself: no trim, no way there. */
  readonly minutes: Minutes;
}

/** What a row reads in a condition. */
export function probeFor({ at, black, instrument, lampTo }: Candidate, condition: Condition): Probe {
  return { red: at.point, black, instrument, lampTo, condition };
}

/** The test lamp an instrument hangs on the point, or null for the meter alone. */
export function lampOf(instrument: Instrument): TestLamp | null {
  if (instrument === "4 A lamp") return "heavy";
  return instrument === "0.25 A lamp" ? "small" : null;
}

/**
 * Every row that could be read where a probe may go: sweeps, single volts, the lamp both ways round, the drop across each
 * fuse, and what can be seen or heard of fuses, controls, plugs and relays.
 */
export function candidatesFor(circuit: Circuit, tries: Tries): readonly Candidate[] {
  const points = testPointsOf(circuit).filter((at) => at.doNotProbe === null);
  return [
    ...circuit.parts.flatMap((part) => [...looksAt(circuit, part), ...soundsOf(circuit, part, tries)]),
    ...circuit.connectors.flatMap((connector) => looksInto(connector, circuit)),
    ...points.flatMap((at) => rowsAt(circuit, at, tries)),
    ...circuit.parts.flatMap((part) => dropsAcross(circuit, part, points, tries)),
  ];
}

function rowsAt(circuit: Circuit, at: TestPoint, tries: Tries): readonly Candidate[] {
  const { conditions, positions } = tries;
  const plain = { at, black: "battery -", instrument: "meter volts", lampTo: null, fineness: "volts" } as const;
  const rows = [...readings(circuit, plain, tries), ...clampsAt(circuit, at, tries)];
  const { lamp } = at;
  if (lamp === null) return rows;
  const lamps = conditions.flatMap((_, index) =>
    (["battery -", "battery +"] as const).map((lampTo) =>
      row({
        ...plain,
        instrument: lamp,
        lampTo,
        sweepOf: null,
        conditions: [index],
        positions: [positions[index]!],
        hands: handsFor(circuit, at, tries, index, true),
      }),
    ),
  );
  return [...rows, ...lamps];
}

/** A clamp round the one wire there, in each position: amps without a contact, where a wire can be singled out. */
function clampsAt(circuit: Circuit, at: TestPoint, tries: Tries): readonly Candidate[] {
  if (!takesClamp(circuit, at.point)) return [];
  return tries.conditions.map((_, index) =>
    row({
      at,
      black: "battery -",
      instrument: "clamp",
      lampTo: null,
      fineness: "amps",
      sweepOf: null,
      conditions: [index],
      positions: [tries.positions[index]!],
      hands: handsFor(circuit, at, tries, index, false),
    }),
  );
}

type Plain = Pick<Candidate, "at" | "black" | "instrument" | "lampTo" | "fineness">;

/** One leads set: at rest, and over every position of the control. With the probe on the point a position costs a moment. */
function readings(circuit: Circuit, plain: Plain, tries: Tries): readonly Candidate[] {
  const { conditions, positions, sweepOf } = tries;
  const hands = conditions.map((_, index) => handsFor(circuit, plain.at, tries, index, false));
  const rows = [row({ ...plain, sweepOf: null, conditions: [0], positions: [positions[0]!], hands: hands[0]! })];
  if (conditions.length > 1) {
    const all = conditions.map((_, index) => index);
    rows.push(row({ ...plain, sweepOf, conditions: all, positions, hands: hands.includes(2) ? 2 : 1 }));
  }
  return rows;
}

/** The drop across a fuse: millivolts that tell the amps through it where nothing need be taken apart. */
function dropsAcross(circuit: Circuit, part: Part, points: readonly TestPoint[], tries: Tries): readonly Candidate[] {
  if (part.kind !== "fuse") return [];
  const [one, other] = bladesOf(circuit, part.id).map((blade) => points.find(({ point }) => point === blade));
  if (!one || !other) return [];
  // Either way round: which blade is fed, the circuit knows and not the fuse.
  return [
    { at: one, black: other.point },
    { at: other, black: one.point },
  ].flatMap((leads) =>
    readings(circuit, { ...leads, instrument: "meter volts", lampTo: null, fineness: "millivolts" }, tries),
  );
}

/** A fuse out and looked at, a control that stands where it should not. */
function looksAt(circuit: Circuit, part: Part): readonly Candidate[] {
  const kind = kindOf(part.kind);
  if (part.kind !== "fuse" && kind?.role !== "control") return [];
  return [bySense(circuit, part.id, "look", null, [0], [""])];
}

/** A plug parted and looked at: not home, a pin out, green or wet. */
function looksInto({ id }: Connector, circuit: Circuit): readonly Candidate[] {
  const look = bySense(circuit, id, "look", null, [0], [""]);
  const forbidden = reachOf(circuit, id).doNotProbe !== undefined;
  return forbidden ? [] : [{ ...look, minutes: look.minutes + MINUTES.plugApart }];
}

/** A relay that clicks while the control is thrown: heard with the trim on. */
function soundsOf(circuit: Circuit, part: Part, { conditions, positions, sweepOf }: Tries): readonly Candidate[] {
  if (part.kind !== "relay" || sweepOf === null) return [];
  return conditions.flatMap((_, index) =>
    index === 0 ? [] : [bySense(circuit, part.id, "listen", sweepOf, [0, index], [positions[0]!, positions[index]!])],
  );
}

function bySense(
  circuit: Circuit,
  thing: PartId | ConnectorId,
  instrument: Instrument,
  sweepOf: string | null,
  conditions: readonly number[],
  positions: readonly string[],
): Candidate {
  const place = placeOf(circuit, thing);
  return row({
    at: instrument === "listen" ? { ...place, access: null } : place,
    black: "battery -",
    instrument,
    lampTo: null,
    sweepOf,
    conditions,
    positions,
    hands: 1,
    fineness: "volts",
  });
}

/** A row that nothing is clipped on for, with what all such rows have in common. */
export function withoutMeter(
  given: Pick<Candidate, "at" | "instrument" | "conditions" | "positions" | "minutes">,
): Candidate {
  return { ...given, black: "battery -", lampTo: null, sweepOf: null, hands: 1, fineness: "volts", alsoOpen: null };
}

function row(given: Omit<Candidate, "minutes" | "alsoOpen">): Candidate {
  const { at, instrument, conditions, hands } = given;
  const lamp = lampOf(instrument) === null ? 0 : MINUTES.lamp;
  const clamp = instrument === "clamp" ? MINUTES.clamp : 0;
  const second = hands === 2 ? MINUTES.secondPerson : 0;
  const own = isBySense(instrument) ? MINUTES[instrument === "look" ? "look" : "listen"] : at.minutes;
  return { ...given, alsoOpen: null, minutes: own + conditions.length * MINUTES.throwControl + lamp + clamp + second };
}

/** Pairs of hands for a setting: a control that springs back is held, and a lamp or a far point takes the hand that held it. */
export function handsFor(circuit: Circuit, at: TestPoint, tries: Tries, index: number, isBusy: boolean): 1 | 2 {
  const { sweepOf, positions } = tries;
  const isHeld = sweepOf !== null && springsBack(circuit, sweepOf, positions[index]!);
  return at.hands === 2 || (isHeld && (isBusy || !isWithinReach(circuit, at, sweepOf))) ? 2 : 1;
}

/** Whether one person can hold the control and reach the point: they lie behind the same trim. */
function isWithinReach(circuit: Circuit, at: TestPoint, key: string | null): boolean {
  const control = key === null ? undefined : controlAt(circuit, key);
  if (!control) return true;
  return (reachOf(circuit, control.part.id).access ?? null) === at.access;
}
