import type { Circuit } from "../../core/circuit/circuit.ts";
import { readCircuit } from "../../schemas/circuit.ts";

const FILES = import.meta.glob<string>("../../samples/*.circuit.json", {
  query: "?raw",
  import: "default",
  eager: true,
});

/** The samples by name, for a page without a program behind it. */
export function sampleCircuits(): ReadonlyMap<string, Circuit> {
  return new Map(
    Object.entries(FILES).flatMap(([path, text]) => {
      const circuit = readCircuit(text);
      const name = path.replace(/^.*\//, "").replace(".circuit.json", "");
      return circuit.ok ? [[name, circuit.value] as const] : [];
    }),
  );
}
