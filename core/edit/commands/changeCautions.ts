import type { Outcome } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";
import { cautionsOf } from "../typed.ts";

/** Gives the circuit other cautions, which every sheet repeats; none at all takes them away. Refuses wrong cautions and `already-so`. */
export function changeCautions(bench: Bench, typed: readonly string[]): Outcome<Edit> {
  const cautions = cautionsOf(typed);
  if (!cautions.ok) return cautions;
  const { value } = cautions;
  if (JSON.stringify(bench.circuit.cautions ?? []) === JSON.stringify(value)) return alreadySo(WIRING_NAMES.cautions);
  return editOf(bench, WIRING_NAMES.changeCautions, [
    { change: "circuit", field: "cautions", ...(value.length > 0 && { value }) },
  ]);
}
