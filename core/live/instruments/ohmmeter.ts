import { type Outcome, ok, refuse } from "../../base/outcome.ts";
import type { WireState } from "../../base/states.ts";
import type { Amps, Ohms } from "../../base/units.ts";
import type { Circuit } from "../../circuit/circuit.ts";
import type { NodeIndex } from "../../solve/element.ts";
import { OPEN_FROM } from "../../trade/instruments.ts";
import type { Attachment, Lead } from "../attachment.ts";
import type { Fault } from "../fault.ts";
import type { CircuitNetwork } from "../network.ts";
import { Rig } from "../rig.ts";
import { snapshotOf } from "../snapshot.ts";
import { resume, type Standing } from "../standing.ts";

/** Volts that the meter puts on its leads, too few to open a junction, and its own ohms (a bench meter's, from memory). */
const TEST = { volts: 0.2, ohms: 100 } as const;
/** A share of the test current that counts as a path of its own (our own number). */
const BRANCHED = 0.02;
/** States of a lead that no feed reaches. */
const DEAD: readonly WireState[] = ["floating", "grounded", "grounded-through-load"];

/**
 * Ohms between two places of a dead circuit, null for an open line: with every source off, contacts and relays as they stand.
 * Refuses `ohms-live` where a feed still reaches a lead, and `ohms-shared` where the test current parts between things,
 * since it would read all of them together.
 */
export function ohmsBetween(
  circuit: Circuit,
  [red, black]: readonly [Lead, Lead],
  now: Standing,
  faults: readonly Fault[] = [],
): Outcome<Ohms | null> {
  const asItIs = standingIn(circuit, now, faults, []);
  const { state } = snapshotOf(asItIs).nodes;
  const live = [red, black].find((lead) => !DEAD.includes(state[nodeOf(asItIs.network, lead)]!));
  if (live !== undefined) return refuse("ohms-live", { point: live });
  const off = { ...now.condition, batteryOff: true, running: false };
  const tester: Attachment = { red, black, law: { law: "source", ...TEST }, isMeter: true };
  const rig = standingIn(circuit, { ...now, condition: off }, faults, [tester]);
  const meter = rig.network.attached[0]!;
  const amps = Math.abs(rig.solver.amps(meter));
  const ohms = Math.abs(rig.solver.voltsAcross(meter)) / amps;
  if (!(ohms < OPEN_FROM)) return ok(null);
  const [one, other] = sharing(rig, amps);
  return one === undefined || other === undefined ? ok(ohms) : refuse("ohms-shared", { one, other });
}

/** A rig in a condition with its relays and fuses as they stand there, solved once: nothing moves any more. */
function standingIn(circuit: Circuit, now: Standing, faults: readonly Fault[], clipped: readonly Attachment[]): Rig {
  const rig = new Rig(circuit, faults, clipped);
  resume(rig, now);
  rig.solver.solve();
  return rig;
}

function nodeOf({ nodes, plus }: CircuitNetwork, lead: Lead): NodeIndex {
  if (lead === "battery +") return plus;
  return lead === "battery -" ? 0 : nodes.get(lead)!;
}

/** Parts that carry some but not all of the test current; those of one part alone share it within. */
function sharing({ network, solver }: Rig, amps: Amps): readonly string[] {
  const share = (index: number): number => Math.abs(solver.amps(index)) / amps;
  const sharing = network.elements.flatMap(({ owner, element, isMeter }, index) => {
    if (isMeter || element.law === "joint" || !network.parts.has(owner)) return [];
    return share(index) > BRANCHED && share(index) < 1 - BRANCHED ? [owner] : [];
  });
  return [...new Set(sharing)];
}
