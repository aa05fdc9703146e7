import { describe, expect, test } from "vitest";
import { liveAfter } from "../../core/live/live.ts";
import { Rig } from "../../core/live/rig.ts";
import { reach } from "../../core/live/settle.ts";
import { resume, statesOf } from "../../core/live/standing.ts";
import { lotsOf } from "../lots.ts";
import { harness } from "../reference/harness.ts";
import { randomCondition, randomFaults } from "../reference/trials.ts";
import { G1, makeSwitch, ROW, vehicle } from "./vehicle.ts";

describe("where a circuit stands", () => {
  test("is only what is not as at rest, without what a fault holds", () => {
    const coil = vehicle(
      [G1, makeSwitch("S1"), { id: "K1", kind: "relay" }],
      ["W1 G1.+ S1.1", "W2 S1.2 K1.86", "W3 K1.85 G1.-"],
    );
    const rig = new Rig(coil);
    expect(statesOf(rig)).toEqual({});
    reach(rig, { set: { S1: "on" } });
    expect(statesOf(rig)).toEqual({ K1: "pulled-in" });
    const welded = new Rig(coil, [{ target: "K1", mode: "welded" }]);
    reach(welded, {});
    expect(statesOf(welded)).toEqual({});
  });

  test("is taken up again by another rig: the same states, the same volts at every node", () => {
    let moved = 0;
    for (let seed = 0; seed < 60; seed++) {
      const lots = lotsOf(seed);
      const circuit = harness(seed, 50);
      const faults = lots.happens(0.5) ? randomFaults(circuit, lots) : [];
      const condition = randomCondition(circuit, lots);
      const rig = new Rig(circuit, faults);
      if (!reach(rig, condition).calm) continue;
      const states = statesOf(rig);
      moved += Object.keys(states).length;
      const other = new Rig(circuit, faults);
      reach(other, randomCondition(circuit, lots));
      resume(other, { condition, states });
      expect(other.solver.solve().converged).toBe(true);
      expect(statesOf(other)).toEqual(states);
      const ohms = rig.solver.sourceOhms();
      // Behind megohms the picoamps that a search may leave over are tenths of a millivolt.
      for (const node of rig.network.nodes.values())
        expect(Math.abs(rig.solver.volts(node) - other.solver.volts(node))).toBeLessThan(
          ohms[node]! < 1000 ? 1e-6 : 1e-3,
        );
    }
    expect(moved).toBeGreaterThan(20);
  });

  test("is told as it was by a live state that is read after the rig has gone on", () => {
    for (let seed = 0; seed < 20; seed++) {
      const lots = lotsOf(seed);
      const circuit = harness(seed, 60);
      const faults = lots.happens(0.5) ? randomFaults(circuit, lots) : [];
      const [kept, fresh] = [new Rig(circuit, faults), new Rig(circuit, faults)];
      const condition = randomCondition(circuit, lots);
      const late = liveAfter(kept, condition);
      const atOnce = liveAfter(fresh, condition);
      const read = [...atOnce.points, ...atOnce.wires, ...atOnce.parts];
      liveAfter(kept, randomCondition(circuit, lots));
      expect([...late.points, ...late.wires, ...late.parts]).toEqual(read);
    }
  });

  test("passes over a part that is no longer there", () => {
    const rig = new Rig(ROW);
    resume(rig, { condition: {}, states: { K9: "pulled-in", F1: "melted" } });
    expect(statesOf(rig)).toEqual({ F1: "melted" });
  });
});
