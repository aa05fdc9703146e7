import { controlsOf } from "../../core/circuit/points.ts";
import { Rig } from "../../core/live/rig.ts";
import { reach, type Settled, settle } from "../../core/live/settle.ts";
import { lotsOf } from "../lots.ts";
import { worstResidual } from "../properties/kirchhoff.ts";
import { harness } from "../reference/harness.ts";
import { presentElements } from "../reference/present.ts";
import { judged } from "./goal.ts";

/** Circuits of each size, 12 and 24 V by turns; each at rest and after so many throws. */
const CIRCUITS: readonly (readonly [nodes: number, count: number])[] = [
  [50, 400],
  [200, 300],
  [500, 80],
  [1_000, 60],
];
const THROWS = 10;

/** What was found over all operating points. */
interface Seen {
  points: number;
  chattering: number;
  notSolved: number;
  worstAmps: number;
}

/**
 * Sums the amps at every node of every operating point by laws that are written apart from the solver, and shows how far off
 * the worst is. A circuit that chatters by name has no operating point, and is only counted.
 */
export function benchPoints(): readonly string[] {
  const seen: Seen = { points: 0, chattering: 0, notSolved: 0, worstAmps: 0 };
  for (const [nodes, count] of CIRCUITS) for (let seed = 1; seed <= count; seed++) tryCircuit(seed, nodes, seen);
  console.table([seen]);
  return judged([
    { name: "operating points", figure: seen.points + seen.chattering, best: "least", goal: 9_000, limit: 9_000 },
    {
      name: "worst residual of Kirchhoff's current law, A",
      figure: seen.worstAmps,
      best: "most",
      goal: 1e-9,
      limit: 1e-9,
    },
    { name: "points not solved, named chatter apart", figure: seen.notSolved, best: "most", goal: 0, limit: 0 },
  ]);
}

function tryCircuit(seed: number, nodes: number, seen: Seen): void {
  const circuit = harness(seed, nodes, { nominalVolts: seed % 2 === 0 ? 24 : 12 });
  const lots = lotsOf(seed);
  const controls = controlsOf(circuit);
  const rig = new Rig(circuit);
  look(rig, reach(rig, {}), seen);
  for (let count = 0; count < THROWS; count++) {
    const { key, control } = lots.oneOf(controls);
    rig.throwControl(key, lots.oneOf(control.positions).name);
    look(rig, settle(rig), seen);
  }
}

function look(rig: Rig, { calm, happenings }: Settled, seen: Seen): void {
  if (!calm) {
    if (happenings.some(({ what }) => what === "not-solved")) seen.notSolved++;
    else seen.chattering++;
    return;
  }
  seen.points++;
  seen.worstAmps = Math.max(seen.worstAmps, worstResidual(rig, presentElements(rig)));
}
