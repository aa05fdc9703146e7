import type { Circuit, Wire } from "../../core/circuit/circuit.ts";
import type { Part } from "../../core/parts/kind.ts";
import { findable } from "./finding.ts";

/** Parts and wires that meet every word typed, in the order of the circuit; all of them for an empty text. */
export function listed(
  circuit: Circuit,
  typed: string,
): { readonly parts: readonly Part[]; readonly wires: readonly Wire[] } {
  const words = typed
    .trim()
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== "");
  if (words.length === 0) return circuit;
  const met = new Set(
    findable(circuit)
      .filter(({ name, about, known }) => {
        const all = `${name} ${about} ${known}`.toLowerCase();
        return words.every((word) => all.includes(word));
      })
      .map(({ thing }) => `${thing.is} ${thing.id}`),
  );
  return {
    parts: circuit.parts.filter(({ id }) => met.has(`part ${id}`)),
    wires: circuit.wires.filter(({ id }) => met.has(`wire ${id}`)),
  };
}
