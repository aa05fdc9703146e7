import type { Circuit } from "../../core/circuit/circuit.ts";
import { groupedBy } from "../../core/diagnose/repairs.ts";
import type { Suspect } from "../../core/diagnose/step.ts";
import { reachOf } from "../../core/diagnose/testPoint.ts";

/** Suspects behind the same trim, with their share together. */
export interface SuspectPlace {
  readonly name: string;
  readonly share: number;
  readonly suspects: readonly Suspect[];
}

/** Suspects by place: where the likeliest sits first, then by share; a wire lies where its first end is reached. */
export function placesOfSuspects(circuit: Circuit, suspects: readonly Suspect[]): readonly SuspectPlace[] {
  const [first, ...others] = groupedBy(suspects, ({ faults }) => placeName(circuit, faults[0]?.target ?? ""));
  return first ? [first, ...others.sort((one, other) => other.share - one.share)] : [];
}

/** Where a part, wire or pin is reached: the trim before it, in words. */
export function placeName(circuit: Circuit, target: string): string {
  const wire = circuit.wires.find(({ id }) => id === target);
  const { access } = reachOf(circuit, wire ? wire.from : target);
  return circuit.access.find(({ id }) => id === access)?.label ?? "Nothing to take off";
}
