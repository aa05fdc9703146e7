import type { Outcome } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";
import { labelNeeded } from "../typed.ts";

/** Gives the circuit another title. Refuses `label-empty`, `label-long` and `already-so`. */
export function changeTitle(bench: Bench, typed: string): Outcome<Edit> {
  const title = labelNeeded(typed);
  if (!title.ok) return title;
  if (bench.circuit.title === title.value) return alreadySo(title.value);
  return editOf(bench, WIRING_NAMES.changeTitle(title.value), [
    { change: "circuit", field: "title", value: title.value },
  ]);
}
