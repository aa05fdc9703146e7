import { problemsOf } from "../../core/circuit/check.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";

/** What the row of a circuit tells of it, beside its versions and times. */
export interface CircuitFacts {
  readonly title: string;
  readonly vehicle: string;
  readonly pages: number;
  readonly parts: number;
  readonly wires: number;
  readonly problems: number;
  readonly looseEnds: number;
}

/** The facts of a circuit; it is checked for them. */
export function factsOf(circuit: Circuit): CircuitFacts {
  const found = problemsOf(circuit);
  const looseEnds = found.filter(({ severity }) => severity === "loose-end").length;
  return {
    title: circuit.title,
    vehicle: circuit.vehicle ?? "",
    pages: circuit.pages.length,
    parts: circuit.parts.length,
    wires: circuit.wires.length,
    problems: found.length - looseEnds,
    looseEnds,
  };
}
