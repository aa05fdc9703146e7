import type { PartId } from "../base/ids.ts";
import type { Ohms, Volts } from "../base/units.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import type { Fault } from "../live/fault.ts";
import { Rig } from "../live/rig.ts";
import { reach } from "../live/settle.ts";
import { METER, meterVolts } from "../trade/instruments.ts";
import { lampAmps, type RatedLamp } from "../trade/lamps.ts";
import type { TestPoint } from "./testPoint.ts";

/** What one point shows a meter in one condition; arrays are by test point. */
export interface Shown {
  /** Open volts to battery negative; 0 where the point floats. */
  readonly volts: Float64Array;
  /** Ohms of source; infinite where it floats. */
  readonly sourceOhms: Float64Array;
  readonly plusVolts: Volts;
  readonly plusOhms: Ohms;
}

/**
 * What every test point shows in each condition with a fault planted (or none). Readings are taken after the complaint
 * was tried once from good fuses, so a fuse that the fault melts is out in all of them. Gives the rig back for reuse.
 */
export function predict(
  circuit: Circuit,
  fault: Fault | null,
  complaint: Condition,
  conditions: readonly Condition[],
  points: readonly TestPoint[],
  givenUp?: Rig,
): { readonly shown: readonly Shown[]; readonly rig: Rig } {
  const rig = new Rig(circuit, fault ? [fault] : [], [], givenUp);
  const tried = reach(rig, complaint);
  const melted: readonly PartId[] = tried.happenings.flatMap((each) => (each.what === "melted" ? [each.part] : []));
  const nodes = points.map(({ point }) => rig.network.nodes.get(point)!);
  const { plus } = rig.network;
  const shown = conditions.map((condition) => {
    reach(rig, condition, undefined, melted);
    const ohms = rig.solver.sourceOhms();
    return {
      volts: Float64Array.from(nodes, (node) => rig.solver.volts(node)),
      sourceOhms: Float64Array.from(nodes, (node) => ohms[node]!),
      plusVolts: rig.solver.volts(plus),
      plusOhms: ohms[plus]!,
    };
  });
  return { shown, rig };
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
  const across = acrossLamp(shown.plusVolts - open, ohms + shown.plusOhms, lamp);
  return { across: Math.abs(across), pointVolts: open + lampAmps(across, lamp) * ohms };
}

/** Volts across a lamp fed from these open volts through these ohms, by bisection: amps rise with volts. */
function acrossLamp(open: Volts, ohms: Ohms, lamp: RatedLamp): Volts {
  let low = 0;
  let high = Math.abs(open);
  for (let halving = 0; halving < 60; halving++) {
    const middle = (low + high) / 2;
    if (middle + lampAmps(middle, lamp) * ohms > Math.abs(open)) high = middle;
    else low = middle;
  }
  return Math.sign(open) * low;
}
