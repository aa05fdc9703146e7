import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Circuit } from "../circuit/circuit.ts";
import type { Printed } from "../parts/kind.ts";
import type { Change } from "./change.ts";

/** A part or wire that can be tied to a spot of a printed page. */
export interface Tied {
  readonly list: "parts" | "wires";
  readonly printed: Printed | undefined;
}

/** The part or wire of this id with what it is tied to, or the refusal `thing-unknown`. */
export function tiedOf({ parts, wires }: Circuit, id: string): Outcome<Tied> {
  const part = parts.find((each) => each.id === id);
  if (part) return ok({ list: "parts", printed: part.printed });
  const wire = wires.find((each) => each.id === id);
  return wire ? ok({ list: "wires", printed: wire.printed }) : refuse("thing-unknown", { id });
}

/** The changes by which nothing is tied to these printed pages any more. */
export function untying(circuit: Circuit, underlays: readonly string[]): readonly Change[] {
  return (["parts", "wires"] as const).flatMap((list) =>
    circuit[list].flatMap(({ id, printed }): readonly Change[] =>
      printed && underlays.includes(printed.underlay) ? [{ change: "item", list, id, field: "printed" }] : [],
    ),
  );
}
