import { type Outcome, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Circuit } from "../../circuit/circuit.ts";
import type { Bench } from "../bench.ts";
import type { Change } from "../change.ts";
import type { Edit } from "../edit.ts";
import { editOf, goingOn } from "../editOf.ts";
import { type NewWire, wireDrawn } from "../wireDrawn.ts";

/** Draws many wires at once, each as `drawWire` does. Refuses `wires-none`, and the first wire that cannot be drawn. */
export function drawWires(bench: Bench, pairs: readonly NewWire[]): Outcome<Edit> {
  if (pairs.length === 0) return refuse("wires-none");
  let circuit: Circuit = bench.circuit;
  const changes: Change[] = [];
  for (const pair of pairs) {
    const drawn = wireDrawn(circuit, pair);
    if (!drawn.ok) return drawn;
    changes.push(...drawn.value.changes);
    circuit = { ...circuit, wires: [...circuit.wires, drawn.value.wire] };
  }
  return editOf(bench, WIRING_NAMES.drawWires(pairs.length), [goingOn(bench), ...changes]);
}
