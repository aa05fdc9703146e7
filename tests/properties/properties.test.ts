import { beforeAll, describe, expect, test } from "vitest";
import { WIRE_STATES } from "../../core/base/states.ts";
import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import { controlsOf } from "../../core/circuit/points.ts";
import { conditionText } from "../../core/live/condition.ts";
import { type Fault, faultText } from "../../core/live/fault.ts";
import { Rig } from "../../core/live/rig.ts";
import { reach, type Settled, settle } from "../../core/live/settle.ts";
import { alwaysClosedOf } from "../../core/live/snapshot.ts";
import { type NodeStates, wireStates } from "../../core/live/wireState.ts";
import { type Lots, lotsOf } from "../lots.ts";
import { harness } from "../reference/harness.ts";
import { presentElements } from "../reference/present.ts";
import { randomCondition, randomFaults } from "../reference/trials.ts";
import { worstDeadVolts, worstResidual } from "./kirchhoff.ts";

const CIRCUITS = 5_000;
const THROWS = 3;
/** What may stand over something that carries no current: a junction in reverse settles to a tenth of a millivolt. */
const DEAD_VOLTS = 1e-4;
const FED: readonly string[] = ["powered", "powered-through-load", "between", "clash"];

/** What was seen over all circuits; each list names where a claim failed. */
const seen = {
  points: 0,
  chattering: 0,
  unsolved: [] as string[],
  unbalanced: [] as string[],
  deadVolts: [] as string[],
  notOneState: [] as string[],
  groundedOff: [] as string[],
  poweredByOpening: [] as string[],
  poweredByNothing: [] as string[],
  changedByMeter: [] as string[],
  firmOffPost: [] as string[],
  forgetful: [] as string[],
};

beforeAll(() => {
  for (let seed = 0; seed < CIRCUITS; seed++) tryCircuit(seed);
}, 600_000);

function tryCircuit(seed: number): void {
  const lots = lotsOf(seed + 400_000);
  const circuit = harness(seed, lots.between(25, 80), { nominalVolts: seed % 4 === 0 ? 24 : 12 });
  const faults = lots.happens(0.5) ? randomFaults(circuit, lots) : [];
  const condition = randomCondition(circuit, lots);
  const name = `${seed} in [${conditionText(condition)}] with [${faults.map(faultText).join(" ")}]`;
  const rig = new Rig(circuit, faults);
  look(rig, reach(rig, condition), condition, name, lots);
  for (let count = 0; count < THROWS; count++) {
    const { key, control } = lots.oneOf(controlsOf(circuit));
    const position = lots.oneOf(control.positions).name;
    rig.throwControl(key, position);
    look(rig, settle(rig), condition, `${name} then ${key}=${position}`, lots);
  }
  tryMeter(circuit, condition, faults, name, lots);
  tryWithoutBattery(rig, condition, name);
  if (seed % 10 === 0) tryAgain(rig, circuit, condition, faults, name);
}

function statesOf(rig: Rig, isOpen: Uint8Array = rig.isOpen): NodeStates {
  const volts = Array.from({ length: rig.network.nodeCount }, (_, node) => rig.solver.volts(node));
  return wireStates(rig.network, isOpen, volts, alwaysClosedOf(rig.network));
}

// ---------------------------------------------------------------- what is looked at after every throw

function look(rig: Rig, settled: Settled, condition: Condition, name: string, lots: Lots): void {
  seen.points++;
  const chatter = settled.happenings.find((happening) => happening.what === "chatters");
  if (chatter) seen.chattering++;
  if (!settled.calm && !chatter?.parts.length) seen.unsolved.push(name);
  rig.solver.solve();
  const elements = presentElements(rig, condition.ambientC);
  const residual = worstResidual(rig, elements);
  if (!(residual <= 1e-9)) seen.unbalanced.push(`${name}: ${residual} A`);
  const dead = worstDeadVolts(rig, elements);
  if (!(dead <= DEAD_VOLTS)) seen.deadVolts.push(`${name}: ${dead} V`);
  const { state, weak } = statesOf(rig);
  if (state.length !== rig.network.nodeCount || !state.every((each) => WIRE_STATES.includes(each)))
    seen.notOneState.push(name);
  tryOpening(rig, state, name, lots);
  const nominal = rig.circuit.nominalVolts;
  const isOff = state.some(
    (each, node) => each === "grounded" && !weak[node] && Math.abs(rig.solver.volts(node)) > 0.05 * nominal,
  );
  if (isOff) seen.firmOffPost.push(name);
}

/** Opens some of what is closed, by lot: nothing that floated may be powered by that. */
function tryOpening(rig: Rig, before: NodeStates["state"], name: string, lots: Lots): void {
  const isOpen = rig.isOpen.map((open, index) => {
    const mayOpen = rig.network.elements[index]!.passes === "contact" && lots.happens(0.3);
    return open === 1 || mayOpen ? 1 : 0;
  });
  const { state } = statesOf(rig, isOpen);
  const isPowered = state.some((each, node) => before[node] === "floating" && FED.includes(each));
  if (isPowered) seen.poweredByOpening.push(name);
}

// ---------------------------------------------------------------- what is looked at once a circuit

function tryMeter(circuit: Circuit, condition: Condition, faults: readonly Fault[], name: string, lots: Lots): void {
  const plain = new Rig(circuit, faults);
  reach(plain, condition);
  const points = [...plain.network.nodes.keys()].filter((point) => !/[~=]/.test(point));
  const leads = { red: lots.oneOf(points), black: lots.oneOf(points) };
  const metered = new Rig(circuit, faults, [{ ...leads, law: { law: "resistor", ohms: 1e7 }, isMeter: true }]);
  reach(metered, condition);
  const [without, withIt] = [statesOf(plain).state, statesOf(metered).state];
  if (without.some((state, node) => withIt[node] !== state))
    seen.changedByMeter.push(`${name} at ${leads.red}, ${leads.black}`);
}

/** Batteries off and engine stopped: nothing is fed, and whatever is grounded is at 0 V. */
function tryWithoutBattery(rig: Rig, condition: Condition, name: string): void {
  reach(rig, { ...condition, batteryOff: true, running: false });
  const { state } = statesOf(rig);
  // Inside a stopped alternator its source still stands, behind open contacts.
  const isFed = [...rig.network.nodes].some(([point, node]) => !point.includes("~") && FED.includes(state[node]!));
  if (isFed) seen.poweredByNothing.push(name);
  const isOff = state.some(
    (each, node) => each.startsWith("grounded") && Math.abs(rig.solver.volts(node)) > DEAD_VOLTS,
  );
  if (isOff) seen.groundedOff.push(name);
}

/** A rig that has been elsewhere comes to the same as a new one. */
function tryAgain(rig: Rig, circuit: Circuit, condition: Condition, faults: readonly Fault[], name: string): void {
  const fresh = new Rig(circuit, faults);
  const settled = reach(fresh, condition);
  const again = reach(rig, condition);
  if (!settled.calm && !again.calm) return;
  const ohms = fresh.solver.sourceOhms();
  const isOther = ohms.some(
    (each, node) => each < 1e3 && Math.abs(fresh.solver.volts(node) - rig.solver.volts(node)) > 1e-6,
  );
  if (isOther || settled.calm !== again.calm) seen.forgetful.push(name);
}

describe(`${CIRCUITS} harnesses, each in a condition and ${THROWS} throws further, half of them faulty`, () => {
  test("all points were looked at", () => expect(seen.points).toBe(CIRCUITS * (THROWS + 1)));
  test("every point is solved, or the parts that chatter are named", () => expect(seen.unsolved).toEqual([]));
  test("chatter is named and rare", () => expect(seen.chattering / seen.points).toBeLessThan(0.005));
  test("Kirchhoff's current law holds to 1e-9 A by laws and volts read apart from the solver", () =>
    expect(seen.unbalanced).toEqual([]));
  test("a wire that leads nowhere has the volts of what it hangs on", () => expect(seen.deadVolts).toEqual([]));
  test("every node has exactly one state", () => expect(seen.notOneState).toEqual([]));
  test("a grounded node that is not weak is within 5 % of nominal of 0 V", () => expect(seen.firmOffPost).toEqual([]));
  test("opening contacts feeds no node that floated", () => expect(seen.poweredByOpening).toEqual([]));
  test("without batteries and engine nothing is fed", () => expect(seen.poweredByNothing).toEqual([]));
  test("without batteries and engine everything grounded is at 0 V", () => expect(seen.groundedOff).toEqual([]));
  test("a meter changes no wire's state", () => expect(seen.changedByMeter).toEqual([]));
  test("a rig that has been elsewhere comes to the same condition as a new one", () =>
    expect(seen.forgetful).toEqual([]));
});
