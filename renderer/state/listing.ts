import type { Circuit, Wire } from "../../core/circuit/circuit.ts";
import type { Part } from "../../core/parts/kind.ts";
import { findable, isMet, typedWords } from "./finding.ts";

/** Parts and wires that meet every word typed, in the order of the circuit; all of them for an empty text. */
export function listed(
  circuit: Circuit,
  typed: string,
): { readonly parts: readonly Part[]; readonly wires: readonly Wire[] } {
  const words = typedWords(typed);
  if (words.length === 0) return circuit;
  const met = new Set(
    findable(circuit)
      .filter((found) => isMet(found, words))
      .map(({ thing }) => `${thing.is} ${thing.id}`),
  );
  return {
    parts: circuit.parts.filter(({ id }) => met.has(`part ${id}`)),
    wires: circuit.wires.filter(({ id }) => met.has(`wire ${id}`)),
  };
}
