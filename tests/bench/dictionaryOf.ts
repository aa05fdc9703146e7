import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import { controlsOf } from "../../core/circuit/points.ts";
import { type Possible, possibleFaults } from "../../core/diagnose/possible.ts";
import { type Predicted, predict } from "../../core/diagnose/predict.ts";
import { testPointsOf } from "../../core/diagnose/testPoint.ts";
import type { Rig } from "../../core/live/rig.ts";

const FAULTS = 150;
const STATES = 16;

/** A circuit with the faults and the conditions of which a dictionary is made. */
export interface Dictionary {
  readonly circuit: Circuit;
  readonly faults: readonly Possible[];
  readonly conditions: readonly Condition[];
}

/** 150 single faults spread evenly over all that a circuit has, and its first 16 conditions: rest, one control thrown, two. */
export function dictionaryOf(circuit: Circuit): Dictionary {
  const single = possibleFaults(circuit).filter(({ faults }) => faults.length === 1);
  const one = controlsOf(circuit).flatMap(({ key, control, rest }) =>
    control.positions.flatMap(({ name }) => (name === rest ? [] : [{ [key]: name }])),
  );
  const two = one.flatMap((first) =>
    one.flatMap((then) => (Object.keys(then)[0]! in first ? [] : [{ ...first, ...then }])),
  );
  return {
    circuit,
    faults: Array.from({ length: FAULTS }, (_, at) => single[Math.floor((at * single.length) / FAULTS)]!),
    conditions: [{}, ...[...one, ...two].map((set) => ({ set }))].slice(0, STATES),
  };
}

/** What every test point shows with every `cores`-th fault from this one on, in every condition. */
export function fill({ circuit, faults, conditions }: Dictionary, from = 0, cores = 1): readonly Predicted[] {
  const points = testPointsOf(circuit);
  const complaint = conditions.at(-1)!;
  const filled: Predicted[] = [];
  let rig: Rig | undefined;
  for (let at = from; at < faults.length; at += cores) {
    const found = predict(circuit, faults[at]!.faults, complaint, conditions, points, rig);
    rig = found.rig;
    filled.push(found.predicted);
  }
  return filled;
}
