import { inverse, Matrix, solve } from "ml-matrix";
import { expect, test } from "vitest";
import { Rig } from "../../core/live/rig.ts";
import { reach } from "../../core/live/settle.ts";
import { lotsOf } from "../lots.ts";
import { harness } from "./harness.ts";
import { presentElements } from "./present.ts";
import { Sets } from "./sets.ts";
import { randomCondition, randomFaults } from "./trials.ts";

// A second opinion: the dense LU of ml-matrix on the nodal equations. It loses about seven digits to milliohms beside
// kilohms, so it is trusted to a microvolt and to a hundred-thousandth of the ohms.
const VOLTS = 1e-6;
const SHARE_OF_OHMS = 1e-5;

/** Nodal matrix and pushed amps of the nodes that something joins to node 0, and each node's row; -1 for node 0, null elsewhere. */
function nodalOf(rig: Rig, ambientC: number) {
  const elements = presentElements(rig, ambientC).filter((element) => element !== null);
  const same = new Sets(rig.network.nodeCount);
  const joined = new Sets(rig.network.nodeCount);
  for (const { law, a, b } of elements) {
    if (law === "joint") same.merge(a, b);
    joined.merge(a, b);
  }
  const rows = new Map<number, number>();
  const rowOf = Array.from({ length: rig.network.nodeCount }, (_, node) => {
    if (joined.of(node) !== joined.of(0)) return null;
    const leader = same.of(node);
    if (leader === same.of(0)) return -1;
    if (!rows.has(leader)) rows.set(leader, rows.size);
    return rows.get(leader)!;
  });
  const matrix = Matrix.zeros(rows.size, rows.size);
  const amps = Matrix.zeros(rows.size, 1);
  const add = (row: number, column: number, siemens: number): void => {
    if (row >= 0 && column >= 0) matrix.set(row, column, matrix.get(row, column) + siemens);
  };
  const push = (row: number, into: number): void => {
    if (row >= 0) amps.set(row, 0, amps.get(row, 0) + into);
  };
  for (const element of elements) {
    const [a, b] = [rowOf[element.a], rowOf[element.b]];
    if (a === null || b === null || a === undefined || b === undefined || a === b || !("ohms" in element)) continue;
    const siemens = 1 / element.ohms;
    add(a, a, siemens);
    add(b, b, siemens);
    add(a, b, -siemens);
    add(b, a, -siemens);
    if (element.law !== "source") continue;
    push(a, element.volts * siemens);
    push(b, -element.volts * siemens);
  }
  return { matrix, amps, rowOf };
}

test.each(Array.from({ length: 40 }, (_, seed) => seed))(
  "linear harness %i: volts and source ohms are those of a dense solve",
  (seed) => {
    const lots = lotsOf(seed + 300_000);
    const circuit = harness(seed, lots.between(50, 120), { isLinear: true, nominalVolts: lots.oneOf([12, 24]) });
    const condition = { ...randomCondition(circuit, lots), ambientC: lots.between(-20, 60) };
    const rig = new Rig(circuit, seed % 2 === 0 ? [] : randomFaults(circuit, lots));
    reach(rig, condition);
    const { matrix, amps, rowOf } = nodalOf(rig, condition.ambientC);
    const volts = solve(matrix, amps);
    const dense = inverse(matrix);
    const ohms = rig.solver.sourceOhms();
    let compared = 0;
    rowOf.forEach((row, node) => {
      expect(rig.solver.isFloating(node)).toBe(row === null);
      if (row === null || row < 0) return;
      compared++;
      expect(Math.abs(rig.solver.volts(node) - volts.get(row, 0))).toBeLessThan(VOLTS);
      expect(Math.abs(ohms[node]! / dense.get(row, row) - 1)).toBeLessThan(SHARE_OF_OHMS);
    });
    expect(compared).toBeGreaterThan(5);
  },
);
