import type { WireId } from "../../base/ids.ts";
import { type Outcome, ok, refuse } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";
import { colourOf } from "../wireLook.ts";

/**
 * Gives a wire another insulation colour, in the code set of the circuit; the empty text takes it away. Refuses
 * `wire-unknown`, `already-so`, and what is no colour of the set.
 */
export function recolourWire(bench: Bench, id: WireId, typed: string): Outcome<Edit> {
  const wire = bench.circuit.wires.find((candidate) => candidate.id === id);
  if (!wire) return refuse("wire-unknown", { wire: id });
  const colour = typed.trim() === "" ? ok("") : colourOf(bench.circuit, typed.trim());
  if (!colour.ok) return colour;
  if ((wire.colour ?? "") === colour.value) return alreadySo(id);
  const value = colour.value === "" ? {} : { value: colour.value };
  return editOf(bench, EDIT_NAMES.recolourWire(id, colour.value || EDIT_NAMES.none), [
    { change: "item", list: "wires", id, field: "colour", ...value },
  ]);
}
