import type { Circuit } from "../../core/circuit/circuit.ts";
import { Rig } from "../../core/live/rig.ts";
import { harness } from "../reference/harness.ts";

const CIRCUITS = 3;
/** A circuit of a size has as many unknowns, give or take this share. */
const OFF_SIZE = 0.04;

/** The first three circuits of a size, with their seeds: a harness ends with its last branch, so that some are larger. */
export function circuitsOf(size: number): readonly (readonly [number, Circuit])[] {
  const found: (readonly [number, Circuit])[] = [];
  for (let seed = 1; found.length < CIRCUITS; seed++) {
    const circuit = harness(seed, Math.max(0.95 * size, size - 25));
    const { unknowns } = new Rig(circuit).solver.pattern;
    if (Math.abs(unknowns / size - 1) < OFF_SIZE) found.push([seed, circuit]);
  }
  return found;
}
