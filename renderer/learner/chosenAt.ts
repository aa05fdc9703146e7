import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Thing } from "../state/thing.ts";
import { partTitle } from "../words/part.ts";

/** What the keys have come to, for whoever does not see it: its name, and what it is. Empty where nothing is chosen. */
export function chosenAt(circuit: Circuit, chosen: Thing | null): string {
  if (!chosen) return "";
  const part = circuit.parts.find(({ id }) => chosen.is === "part" && id === chosen.id);
  const wire = circuit.wires.find(({ id }) => chosen.is === "wire" && id === chosen.id);
  const about = part ? partTitle(circuit, part) : wire ? `wire from ${wire.from} to ${wire.to}` : "";
  return [chosen.id, about].filter((word) => word !== "").join(", ");
}
