import type { ConnectorId, PartId } from "../base/ids.ts";
import { remember } from "../base/memo.ts";
import type { Ohms, Volts } from "../base/units.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { Beside, Course, replacementsIn } from "../live/course.ts";
import { type Fault, targetOf } from "../live/fault.ts";
import { inEach, type Way } from "../live/inEach.ts";
import { type CircuitNetwork, networkOf } from "../live/network.ts";
import { Rig, type Starts } from "../live/rig.ts";
import { reach } from "../live/settle.ts";
import type { State } from "../solve/solver.ts";
import { type Replacement, UnmovedReader } from "../solve/unmoved.ts";
import { METER, meterVolts } from "../trade/instruments.ts";
import { lampAmps, type RatedLamp } from "../trade/lamps.ts";
import { clampElement } from "./otherUnits.ts";
import type { TestPoint } from "./testPoint.ts";

/** What a circuit shows in one condition; arrays are by test point, and "battery +" may stand behind the last. */
export interface Shown {
  /** Open volts to battery negative; 0 where the point floats. */
  readonly volts: Float64Array;
  /** Ohms of source; infinite where it floats. */
  readonly sourceOhms: Float64Array;
  /** What a clamp round the one wire there shows, without sign; 0 where there is none. */
  readonly amps: Float64Array;
  readonly plusVolts: Volts;
  readonly plusOhms: Ohms;
  /** States of the parts that have any: "pulled-in", "melted". */
  readonly states: ReadonlyMap<PartId, string>;
}

/** What a circuit with given faults shows in every condition, and which of its controls stand elsewhere than set. */
export interface Predicted {
  readonly shown: readonly Shown[];
  /** By part: "middle at open". */
  readonly left: ReadonlyMap<PartId, string>;
  /** What a look into each plug shows. */
  readonly plugs: ReadonlyMap<ConnectorId, string>;
}

/**
 * What every test point shows in each condition with faults planted (or none). Readings are taken after the complaint
 * was tried once from good fuses, so a fuse that the faults melt is out in all of them.
 */
export function predict(
  circuit: Circuit,
  faults: readonly Fault[],
  complaint: Condition,
  conditions: readonly Condition[],
  points: readonly TestPoint[],
): Predicted {
  return predictedIn(new Rig(circuit, faults), faults, complaint, conditions, points);
}

/**
 * As `predict`, for one set of faults after the other: faster, for every search starts where that of the sound circuit
 * ended. What is shown is kept in `room` where that is given.
 */
export function predictor(
  circuit: Circuit,
  complaint: Condition,
  conditions: readonly Condition[],
  points: readonly TestPoint[],
): (faults: readonly Fault[], room?: Float64Array) => Predicted {
  const starts: Starts = new Map();
  const course = new Course();
  let last = new Rig(circuit);
  last.startFrom(starts);
  const sound = predictedIn(last, [], complaint, conditions, points, { noted: course });
  const reader = new UnmovedReader(last.solver.pattern);
  // At another ambient wires have other ohms, of which a course knows nothing.
  const isAtTable = [complaint, ...conditions].every(({ ambientC }) => ambientC === undefined);
  return (faults, room) => {
    if (faults.length === 0 && room === undefined) return sound;
    const rig = new Rig(circuit, faults, [], last);
    // One of another shape is used once, and the last is kept for those to come.
    if (rig.solver === last.solver) last = rig;
    rig.startFrom(starts);
    const replacements = isAtTable ? replacementsIn(rig.network) : null;
    if (!replacements) return predictedIn(rig, faults, complaint, conditions, points, {}, room);
    const beside = new Beside(course, replacements);
    const other: Other = { sound, reader, replacements };
    return predictedIn(rig, faults, complaint, conditions, points, { beside }, room, other);
  };
}

/** How many numbers one prediction holds, for those who keep many in one array. */
export function roomFor(points: readonly TestPoint[], conditions: readonly Condition[]): number {
  return 3 * (points.length + 1) * conditions.length;
}

/** What is needed to tell from what the sound circuit shows what one shows in which other resistors move no volts. */
interface Other {
  readonly sound: Predicted;
  readonly reader: UnmovedReader;
  readonly replacements: readonly Replacement[];
}

function predictedIn(
  rig: Rig,
  faults: readonly Fault[],
  complaint: Condition,
  conditions: readonly Condition[],
  points: readonly TestPoint[],
  way: Way = {},
  room: Float64Array = new Float64Array(roomFor(points, conditions)),
  other: Other | null = null,
): Predicted {
  const asked = askedOf(rig, points);
  const shown: Shown[] = [];
  inEach(
    rig,
    complaint,
    conditions,
    (condition, point) => {
      const views = viewsOf(room, condition, points.length + 1);
      shown[condition] =
        point && other ? shownBeside(other, condition, point, asked, views) : shownBy(rig, asked, views);
    },
    way,
  );
  return { shown, left: leftIn(rig), plugs: plugsWith(rig.circuit, faults) };
}

/** What is read of a settled rig: nodes, of which the last is "battery +", and elements that a clamp goes round. */
interface Asked {
  readonly nodes: Int32Array;
  readonly clamps: Int32Array;
}

function lookedUp(circuit: Circuit, network: CircuitNetwork, points: readonly TestPoint[]): Asked {
  const { nodes, plus } = network;
  return {
    nodes: Int32Array.from([...points.map(({ point }) => nodes.get(point)!), plus]),
    clamps: Int32Array.from(points, ({ point }) => clampElement(circuit, network, point)),
  };
}

const askedWhenSound = remember((circuit: Circuit) =>
  remember((points: readonly TestPoint[]) => lookedUp(circuit, networkOf(circuit), points)),
);

/** What is read at some points. Faults leave nodes and elements their numbers, but for wires that they cut in two. */
function askedOf({ circuit, network }: Rig, points: readonly TestPoint[]): Asked {
  return network.wires === networkOf(circuit).wires
    ? askedWhenSound(circuit)(points)
    : lookedUp(circuit, network, points);
}

/** The arrays of what is shown in one condition. */
type Views = Pick<Shown, "volts" | "sourceOhms" | "amps">;

/** The part of this number of the room for all conditions; `size` is the number of nodes asked for. */
function viewsOf(room: Float64Array, number: number, size: number): Views {
  const start = 3 * number * size;
  return {
    volts: room.subarray(start, start + size),
    sourceOhms: room.subarray(start + size, start + 2 * size),
    amps: room.subarray(start + 2 * size, start + 3 * size - 1),
  };
}

/** What a settled rig shows. */
function shownBy(rig: Rig, { nodes, clamps }: Asked, views: Views): Shown {
  const { volts, sourceOhms, amps } = views;
  rig.solver.readOut(nodes, volts, sourceOhms);
  rig.solver.readAmps(clamps, amps);
  return shownIn(views, rig.statesNow());
}

/** What a circuit shows that differs from the sound one by resistors that move no volts at this operating point of it. */
function shownBeside(
  { sound, reader, replacements }: Other,
  condition: number,
  point: State,
  { nodes }: Asked,
  views: Views,
): Shown {
  const before = sound.shown[condition]!;
  reader.read(point, replacements, nodes, before, views);
  views.amps.set(before.amps);
  return shownIn(views, before.states);
}

function shownIn(views: Views, states: ReadonlyMap<PartId, string>): Shown {
  const plus = views.volts.length - 1;
  return { ...views, plusVolts: views.volts[plus]!, plusOhms: views.sourceOhms[plus]!, states };
}

/** Fuses that melt while the complaint is tried from good ones. */
export function meltedIn(rig: Rig, complaint: Condition): readonly PartId[] {
  return reach(rig, complaint).happenings.flatMap((each) => (each.what === "melted" ? [each.part] : []));
}

/** Controls that stand elsewhere than they are set to, by part. */
export function leftIn(rig: Rig): ReadonlyMap<PartId, string> {
  const left = new Map<PartId, string>();
  for (const [id, { stands }] of rig.network.parts) {
    if (stands.size === 0) continue;
    const words = [...stands].map(([control, position]) => (control === "" ? position : `${control} at ${position}`));
    left.set(id, words.join(", "));
  }
  return left;
}

/** What a plug that nothing is wrong with shows. */
const SOUND = "sound";

/** What a look into each plug shows: "sound", or of its faults "loose", "3 out", "corroded". */
export function plugsWith(circuit: Circuit, faults: readonly Fault[]): ReadonlyMap<ConnectorId, string> {
  const plugs = new Map<ConnectorId, string>(circuit.connectors.map(({ id }) => [id, SOUND]));
  for (const { target: id, mode } of faults) {
    const target = targetOf(circuit, id);
    if (target?.is !== "cavity") continue;
    const { connector, cavity } = target;
    plugs.set(connector, mode === "corroded" ? "corroded" : plugs.get(connector) !== SOUND ? "loose" : `${cavity} out`);
  }
  return plugs;
}

/** Volts a 10 Mohm meter shows from a point to battery negative. */
export function meterReads({ volts, sourceOhms }: Shown, point: number): Volts {
  const ohms = sourceOhms[point]!;
  return Number.isFinite(ohms) ? meterVolts(volts[point]!, ohms, METER.ohms) : 0;
}

/** A lamp hung on a point as a real load: volts across it, and volts of the point to battery negative meanwhile. */
export interface LampReads {
  readonly across: Volts;
  readonly pointVolts: Volts;
}

/** A lamp from a point to one of the battery's posts; the circuit stands as its open volts and ohms of source. */
export function lampReads(shown: Shown, point: number, lampTo: "battery +" | "battery -", lamp: RatedLamp): LampReads {
  const open = shown.volts[point]!;
  const ohms = shown.sourceOhms[point]!;
  if (lampTo === "battery -") {
    const across = Number.isFinite(ohms) ? acrossLamp(open, ohms, lamp) : 0;
    return { across, pointVolts: across };
  }
  if (!Number.isFinite(ohms)) return { across: 0, pointVolts: shown.plusVolts };
  // With the battery lost its plus hangs on nothing: the lamp has no feed, and the point stays as it is.
  if (!Number.isFinite(shown.plusOhms)) return { across: 0, pointVolts: open };
  const across = acrossLamp(shown.plusVolts - open, ohms + shown.plusOhms, lamp);
  return { across: Math.abs(across), pointVolts: open + lampAmps(across, lamp) * ohms };
}

/** Share of the open volts to which the volts across a lamp are found. */
const NEAR = 1e-10;
const MOST_STEPS = 60;

/**
 * Volts across a lamp fed from these open volts through these ohms, of the sign of the open volts: false position, the
 * end that stays weighed less each time (the Illinois rule). Amps rise with volts, so there is one answer.
 */
function acrossLamp(open: Volts, ohms: Ohms, lamp: RatedLamp): Volts {
  const size = Math.abs(open);
  const excess = (volts: Volts): Volts => volts + lampAmps(volts, lamp) * ohms - size;
  let [low, under] = [0, -size];
  let [high, over] = [size, excess(size)];
  if (over <= NEAR * size) return open;
  for (let step = 0; step < MOST_STEPS; step++) {
    const middle = high - (over * (high - low)) / (over - under);
    const off = excess(middle);
    if (Math.abs(off) <= NEAR * size) return Math.sign(open) * middle;
    if (off > 0) {
      [high, over] = [middle, off];
      under /= 2;
    } else {
      [low, under] = [middle, off];
      over /= 2;
    }
  }
  return (Math.sign(open) * (low + high)) / 2;
}
