import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { type Fault, faultText, faultTitle } from "../live/fault.ts";
import { type Known, probeOrder, suspicion } from "./order.ts";
import { type Possible, possibleFaults } from "./possible.ts";
import { mayBeProbed } from "./scope.ts";
import type { ProbeOrder, Suspect } from "./step.ts";
import type { Observation } from "./suspects.ts";

/** What a search ended at, and the suspects that it left. */
export interface Found {
  readonly found: Pick<Possible, "id" | "faults" | "title">;
  readonly living: readonly Suspect[];
}

/**
 * What was found: the faults that are named, or with none the suspect that the readings leave. Refuses `over-60-volts`, and
 * with `proof-none` a search that still goes on.
 */
export function foundBy(
  circuit: Circuit,
  complaint: Observation,
  known: Known,
  faults: readonly Fault[],
): Outcome<Found> {
  const probed = mayBeProbed(circuit);
  if (!probed.ok) return probed;
  if (faults.length > 0)
    return ok({ found: namedFault(circuit, faults), living: suspicion(circuit, complaint, known).suspects });
  const order = probeOrder(circuit, complaint, known);
  const found = foundIn(order);
  return found ? ok({ found, living: order.suspects }) : refuse("proof-none");
}

/** The suspect to prove: the likeliest one, where the search says that it is certain or is ordered now; else null. */
export function foundIn({ progress, suspects }: ProbeOrder): Suspect | null {
  return progress === "certain" || progress === "order-now" ? (suspects[0] ?? null) : null;
}

function namedFault(circuit: Circuit, faults: readonly Fault[]): Found["found"] {
  const id = faults.map(faultText).join("+");
  const known = possibleFaults(circuit).find((possible) => possible.id === id);
  return known ?? { id, faults, title: faults.map((fault) => faultTitle(circuit, fault)).join(", ") };
}
