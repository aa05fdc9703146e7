import { type Outcome, refuse } from "../../base/outcome.ts";
import { PRINTED_NAMES } from "../../base/words/printed.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { editOf, nameOfAll } from "../editOf.ts";
import { tiedOf } from "../tying.ts";

/** Unties a part or wire from the printed page. Refuses `thing-unknown` and `not-tied`. */
export function untieFromPrint(bench: Bench, id: string): Outcome<Edit> {
  const thing = tiedOf(bench.circuit, id);
  if (!thing.ok) return thing;
  const what = nameOfAll(bench.circuit, [id]);
  if (!thing.value.printed) return refuse("not-tied", { what });
  return editOf(bench, PRINTED_NAMES.untie(what), [{ change: "item", list: thing.value.list, id, field: "printed" }]);
}
