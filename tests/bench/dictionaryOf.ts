import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import { controlsOf } from "../../core/circuit/points.ts";
import { type Possible, possibleFaults } from "../../core/diagnose/possible.ts";
import { type Predicted, predictor, roomFor } from "../../core/diagnose/predict.ts";
import { testPointsOf } from "../../core/diagnose/testPoint.ts";

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

/** How many numbers a dictionary comes to. */
export function numbersIn({ circuit, faults, conditions }: Dictionary): number {
  return faults.length * roomFor(testPointsOf(circuit), conditions);
}

/**
 * What every test point shows with some faults in every condition: those that `next` numbers, up to the last of all. The
 * numbers of a fault lie at its place among those of all, so that threads that take turns fill one array.
 */
export function fill(
  { circuit, faults, conditions }: Dictionary,
  numbers: Float64Array,
  next: () => number = counting(),
): ReadonlyMap<number, Predicted> {
  const points = testPointsOf(circuit);
  const size = roomFor(points, conditions);
  const shownWith = predictor(circuit, conditions.at(-1)!, conditions, points);
  const filled = new Map<number, Predicted>();
  for (let at = next(); at < faults.length; at = next())
    filled.set(at, shownWith(faults[at]!.faults, numbers.subarray(at * size, (at + 1) * size)));
  return filled;
}

/** Every number from 0 on. */
function counting(): () => number {
  let at = 0;
  return () => at++;
}
