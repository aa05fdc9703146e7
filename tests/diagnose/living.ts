import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Possible } from "../../core/diagnose/possible.ts";
import { type Observation, suspectsFor } from "../../core/diagnose/suspects.ts";

/** What brings the complaint about and is contradicted by nothing that was seen, likeliest first. */
export function living(
  circuit: Circuit,
  complaint: Observation,
  others: readonly Observation[] = [],
): readonly Possible[] {
  return suspectsFor(circuit, complaint, others)
    .filter(({ against }) => against.length === 0)
    .sort((one, other) => other.weight - one.weight)
    .map(({ possible }) => possible);
}
