import type { Circuit } from "../../core/circuit/circuit.ts";
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
  const places = new Map<string, Suspect[]>();
  for (const suspect of suspects) {
    const name = placeName(circuit, suspect.faults[0]?.target ?? "");
    const others = places.get(name);
    if (others) others.push(suspect);
    else places.set(name, [suspect]);
  }
  const [first, ...others] = [...places].map(([name, own]) => ({
    name,
    share: own.reduce((sum, { probability }) => sum + probability, 0),
    suspects: own,
  }));
  return first ? [first, ...others.sort((one, other) => other.share - one.share)] : [];
}

function placeName(circuit: Circuit, target: string): string {
  const wire = circuit.wires.find(({ id }) => id === target);
  const { access } = reachOf(circuit, wire ? wire.from : target);
  return circuit.access.find(({ id }) => id === access)?.label ?? "Nothing to take off";
}
