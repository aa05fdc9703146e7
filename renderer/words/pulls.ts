import type { Circuit } from "../../core/circuit/circuit.ts";
import { terminalPoint } from "../../core/circuit/points.ts";
import { kindOf } from "../../core/parts/catalogue.ts";

/** Something that can be pulled, with what it is. */
export interface Pull {
  readonly id: string;
  readonly about: string | undefined;
}

/** Connectors and in-line joints that can be pulled apart, each once. */
export function plugsOf(circuit: Circuit): readonly Pull[] {
  const joints = circuit.parts.filter(({ kind }) => kind === "connector");
  const plugs = circuit.connectors.filter(({ id }) => !joints.some((joint) => joint.id === id));
  return [...plugs, ...joints].map(({ id, label }) => ({ id, about: label }));
}

/** Parts that a hand takes out of their holder: fuses, breakers and relays. */
export function fusesOf(circuit: Circuit): readonly Pull[] {
  return circuit.parts
    .filter(({ kind }) => kindOf(kind)?.role === "protection" || kind === "relay" || kind === "flasher")
    .map(({ id, label }) => ({ id, about: label }));
}

/** True where the engine's running makes a difference: there is an alternator. */
export function hasEngine(circuit: Circuit): boolean {
  return circuit.parts.some(({ kind }) => kind === "alternator");
}

/** Module pins that can be driven by hand; only those of one part where it is named. */
export function drivenPins(circuit: Circuit, only?: string): readonly string[] {
  const parts = only === undefined ? circuit.parts : circuit.parts.filter(({ id }) => id === only);
  return parts.flatMap((part) =>
    Object.entries(part.pins ?? {}).flatMap(([pin, role]) =>
      role === "drives-high" || role === "drives-low" ? [terminalPoint(part, pin)] : [],
    ),
  );
}
