import type { ConnectorId, PartId } from "../base/ids.ts";
import type { Ohms, Volts } from "../base/units.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { type Fault, targetOf } from "../live/fault.ts";
import { inEach } from "../live/inEach.ts";
import { Rig } from "../live/rig.ts";
import { reach } from "../live/settle.ts";
import { METER, meterVolts } from "../trade/instruments.ts";
import { lampAmps, type RatedLamp } from "../trade/lamps.ts";
import { ampsIn, clampElement } from "./otherUnits.ts";
import type { TestPoint } from "./testPoint.ts";

/** What a circuit shows in one condition; arrays are by test point. */
export interface Shown {
  /** Open volts to battery negative; 0 where the point floats. */
  readonly volts: Float64Array;
  /** Ohms of source; infinite where it floats. */
  readonly sourceOhms: Float64Array;
  /** What a clamp round the one wire there shows; 0 where there is none. */
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
 * was tried once from good fuses, so a fuse that the faults melt is out in all of them. Gives the rig back for reuse.
 */
export function predict(
  circuit: Circuit,
  faults: readonly Fault[],
  complaint: Condition,
  conditions: readonly Condition[],
  points: readonly TestPoint[],
  givenUp?: Rig,
): { readonly predicted: Predicted; readonly rig: Rig } {
  const rig = new Rig(circuit, faults, [], givenUp);
  const melted = meltedIn(rig, complaint);
  const { nodes: named, plus } = rig.network;
  const nodes = Int32Array.from([...points.map(({ point }) => named.get(point)!), plus]);
  const clamps = Int32Array.from(points, ({ point }) => clampElement(circuit, rig, point));
  const block = new Float64Array(3 * nodes.length * conditions.length);
  const shown: Shown[] = [];
  inEach(rig, conditions, melted, (condition) => {
    shown[condition] = shownBy(rig, { nodes, clamps }, block, condition);
  });
  return { predicted: { shown, left: leftIn(rig), plugs: plugsWith(circuit, faults) }, rig };
}

/** What is read of a settled rig: nodes, of which the last is "battery +", and elements that a clamp goes round. */
interface Asked {
  readonly nodes: Int32Array;
  readonly clamps: Int32Array;
}

/** What a settled rig shows, kept in the room of this number of a block that holds all conditions. */
function shownBy(rig: Rig, { nodes, clamps }: Asked, block: Float64Array, number: number): Shown {
  const size = nodes.length;
  const room = (part: number, length: number): Float64Array => {
    const start = (3 * number + part) * size;
    return block.subarray(start, start + length);
  };
  const plus = size - 1;
  const [volts, ohms, amps] = [room(0, size), room(1, size), room(2, plus)];
  rig.solver.readOut(nodes, volts, ohms);
  for (let point = 0; point < plus; point++) amps[point] = ampsIn(rig, clamps[point]!);
  return {
    volts: room(0, plus),
    sourceOhms: room(1, plus),
    amps,
    plusVolts: volts[plus]!,
    plusOhms: ohms[plus]!,
    states: new Map(rig.states),
  };
}

/** Fuses that melt while the complaint is tried from good ones. */
export function meltedIn(rig: Rig, complaint: Condition): readonly PartId[] {
  return reach(rig, complaint).happenings.flatMap((each) => (each.what === "melted" ? [each.part] : []));
}

/** Controls that stand elsewhere than they are set to, by part. */
export function leftIn(rig: Rig): ReadonlyMap<PartId, string> {
  const left = new Map<PartId, string>();
  for (const [id, { stands }] of rig.network.parts) {
    const words = [...stands].map(([control, position]) => (control === "" ? position : `${control} at ${position}`));
    if (words.length > 0) left.set(id, words.join(", "));
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
