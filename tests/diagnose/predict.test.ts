import { describe, expect, it } from "vitest";
import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import { controlsOf } from "../../core/circuit/points.ts";
import { possibleFaults } from "../../core/diagnose/possible.ts";
import { meltedIn, type Predicted, predictor } from "../../core/diagnose/predict.ts";
import { testPointsOf } from "../../core/diagnose/testPoint.ts";
import { triesFor } from "../../core/diagnose/tries.ts";
import type { Fault } from "../../core/live/fault.ts";
import { Rig } from "../../core/live/rig.ts";
import { reach } from "../../core/live/settle.ts";
import { DIODES } from "../../core/parts/diode.ts";
import { UNMOVED_AMPS } from "../../core/solve/solver.ts";
import { trials } from "../long.ts";
import { harness } from "../reference/harness.ts";
import { SAMPLE_NAMES, sample } from "../samples/onTheBench.ts";

/** Behind more ohms a point hangs on what leaks: no meter reads it, and no two searches need agree on its volts. */
const GHOST_OHMS = 100_000;
const VOLTS_APART = 1e-7;
const SHARE_APART = 1e-7;
/** Two searches may each leave a diode's line off its law by a thousandth of its saturation amps, and a change of `UNMOVED_AMPS` unsolved. */
const { saturationAmps, emissionVolts } = DIODES.silicon;
const AMPS_APART = 2e-3 * saturationAmps + UNMOVED_AMPS;
const FAULTS = trials(40, 400);

/** Single faults spread evenly over all that a circuit has. */
function someFaults(circuit: Circuit): readonly (readonly Fault[])[] {
  const all = possibleFaults(circuit);
  const step = Math.max(1, all.length / FAULTS);
  return Array.from({ length: Math.min(FAULTS, all.length) }, (_, at) => all[Math.floor(at * step)]!.faults);
}

/** Where a prediction differs from what a rig built anew for every condition shows. */
function differences(
  circuit: Circuit,
  faults: readonly Fault[],
  complaint: Condition,
  conditions: readonly Condition[],
  { shown }: Predicted,
): readonly string[] {
  const points = testPointsOf(circuit);
  const melted = meltedIn(new Rig(circuit, faults), complaint);
  return conditions.flatMap((condition, number) => {
    const rig = new Rig(circuit, faults);
    reach(rig, condition, undefined, melted);
    const ohms = rig.solver.sourceOhms();
    const { volts, sourceOhms, states } = shown[number]!;
    const apart = points.flatMap(({ point }, at) => {
      const node = rig.network.nodes.get(point)!;
      const [now, own] = [sourceOhms[at]!, ohms[node]!];
      if (now > GHOST_OHMS && own > GHOST_OHMS) return [];
      const leaks = AMPS_APART * own;
      const isAlike =
        Math.abs(volts[at]! - rig.solver.volts(node)) <= VOLTS_APART + leaks &&
        Math.abs(now - own) <= (SHARE_APART + leaks / emissionVolts) * own + 1e-12;
      return isAlike ? [] : [`${point}: ${volts[at]} V, ${now} ohm; ${rig.solver.volts(node)} V, ${own} ohm`];
    });
    const moved = [...states].flatMap(([part, state]) =>
      state === rig.states.get(part) ? [] : [`${part}: ${state}; ${rig.states.get(part)}`],
    );
    return [...apart, ...moved].map((text) => `${JSON.stringify(condition)} ${JSON.stringify(faults)} ${text}`);
  });
}

function disagreements(circuit: Circuit, complaint: Condition, conditions: readonly Condition[]): readonly string[] {
  const shownWith = predictor(circuit, complaint, conditions, testPointsOf(circuit));
  return [[], ...someFaults(circuit)].flatMap((faults) =>
    differences(circuit, faults, complaint, conditions, shownWith(faults)),
  );
}

describe("predictions one after the other are those of a circuit laid out and thrown anew each time", () => {
  it.each(SAMPLE_NAMES)("%s", (name) => {
    const circuit = sample(name);
    const check = circuit.checks[0]!;
    const { conditions } = triesFor(circuit, check);
    expect(disagreements(circuit, check.condition, conditions)).toEqual([]);
  });

  it.each([
    [1, 60],
    [2, 60],
    [4, 190],
  ])("vehicle %i drawn by lot, of %i nodes", (seed, size) => {
    const circuit = harness(seed, size);
    const thrown = controlsOf(circuit).flatMap(({ key, control, rest }): readonly Condition[] =>
      control.positions.flatMap(({ name }) => (name === rest ? [] : [{ set: { [key]: name } }])),
    );
    expect(thrown.length).toBeGreaterThan(0);
    const conditions: readonly Condition[] = [{}, ...thrown.slice(0, 6)];
    expect(disagreements(circuit, conditions.at(-1)!, conditions)).toEqual([]);
  });

  it("where a condition sets a control to where it rests, after one that throws it", () => {
    const circuit = harness(1, 60);
    const conditions = controlsOf(circuit).flatMap(({ key, control, rest }): readonly Condition[] =>
      control.positions.flatMap(({ name }) =>
        name === rest ? [] : [{ set: { [key]: name } }, { set: { [key]: rest } }],
      ),
    );
    expect(conditions.length).toBeGreaterThan(2);
    expect(disagreements(circuit, conditions[0]!, conditions)).toEqual([]);
  });
});
