import { type Outcome, ok, refuse } from "../../base/outcome.ts";
import type { WireState } from "../../base/states.ts";
import type { Amps, Ohms } from "../../base/units.ts";
import type { Circuit } from "../../circuit/circuit.ts";
import { LIVE_FROM, OPEN_FROM } from "../../trade/instruments.ts";
import type { Attachment, Lead } from "../attachment.ts";
import type { Fault } from "../fault.ts";
import { leadNode } from "../network.ts";
import { Rig } from "../rig.ts";
import { snapshotOf } from "../snapshot.ts";
import { resume, type Standing } from "../standing.ts";

/** Volts that the meter puts on its leads, too few to open a junction, and its own ohms (a bench meter's, from memory). */
const TEST = { volts: 0.2, ohms: 100 } as const;
/** A share of the test current that counts as a path of its own (our own number). */
const BRANCHED = 0.02;
/** States of a lead that no feed reaches. */
const DEAD: readonly WireState[] = ["floating", "grounded", "grounded-through-load"];

/** A circuit as it stands, with what else is clipped to it. */
export interface Stands {
  readonly circuit: Circuit;
  readonly now: Standing;
  readonly faults: readonly Fault[];
  readonly others: readonly Attachment[];
}

/**
 * Ohms between two places of a dead circuit, null for an open line: with every source off, contacts and relays as they stand,
 * and everything else that is clipped on. Refuses `ohms-live` where a feed still reaches a lead or volts stand between them, and
 * `ohms-shared` where the test current parts between things, since it would read all of them together.
 */
export function ohmsBetween(stands: Stands, [red, black]: readonly [Lead, Lead]): Outcome<Ohms | null> {
  const { now, others } = stands;
  const asItIs = standingIn(stands, now, others);
  const live = liveLead(asItIs, red, black);
  if (live !== null) return refuse("ohms-live", { point: live });
  const dead = { ...now, condition: { ...now.condition, batteryOff: true, running: false } };
  const ohms = ohmsShown(standingIn(stands, dead, others), red, black);
  if (ohms >= OPEN_FROM) return ok(null);
  const tester: Attachment = { red, black, law: { law: "source", ...TEST }, isMeter: true };
  const rig = standingIn(stands, dead, [...others, tester]);
  const [one, other] = sharing(rig, Math.abs(rig.solver.amps(rig.network.attached.at(-1)!)));
  return one === undefined || other === undefined ? ok(ohms) : refuse("ohms-shared", { one, other });
}

/** Ohms that a meter shows between two leads of a settled rig, its sources dead; `OPEN_FROM` where it shows no figure. */
export function ohmsShown({ network, solver }: Rig, red: Lead, black: Lead): Ohms {
  return Math.min(OPEN_FROM, solver.ohmsBetween(leadNode(network, red), leadNode(network, black)));
}

/** The lead that makes it no place for an ohmmeter; null where both are dead. */
function liveLead(rig: Rig, red: Lead, black: Lead): Lead | null {
  const { network, solver } = rig;
  const { state } = snapshotOf(rig).nodes;
  const fed = [red, black].find((lead) => !DEAD.includes(state[leadNode(network, lead)]!));
  if (fed !== undefined) return fed;
  const apart = Math.abs(solver.volts(leadNode(network, red)) - solver.volts(leadNode(network, black)));
  return apart >= LIVE_FROM ? red : null;
}

/** A rig in a condition with its relays and fuses as they stand there, solved once: nothing moves any more. */
function standingIn({ circuit, faults }: Stands, now: Standing, clipped: readonly Attachment[]): Rig {
  const rig = new Rig(circuit, faults, clipped);
  resume(rig, now);
  rig.solver.solve();
  return rig;
}

/** Two things that carry some but not all of the test current, of ways that part; fewer where it goes one way alone. */
function sharing({ network, solver }: Rig, amps: Amps): readonly string[] {
  const shares = new Map<string, number>();
  network.elements.forEach(({ owner, element, isMeter }, index) => {
    if (isMeter || element.law === "joint" || owner.startsWith("~") || owner === "") return;
    if (!network.parts.has(owner)) return;
    const share = Math.abs(solver.amps(index)) / amps;
    if (share > BRANCHED && share < 1 - BRANCHED) shares.set(owner, share);
  });
  const [[one, share] = ["", 0], ...others] = shares;
  // What carries as much may stand in the same way; what carries another share does not.
  const apart = others.find(([, other]) => Math.abs(other - share) > BRANCHED) ?? others.at(-1);
  return apart === undefined ? [] : [one, apart[0]];
}
