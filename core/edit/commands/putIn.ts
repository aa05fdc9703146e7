import type { PartId } from "../../base/ids.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { conditionEdit, nameOf } from "../editOf.ts";

/** Puts a part back that was taken out, melted as it may be. Refuses `not-out`. */
export function putIn(bench: Bench, part: PartId): Outcome<Edit> {
  const out = bench.condition.out ?? [];
  if (!out.includes(part)) return refuse("not-out", { part });
  const name = EDIT_NAMES.putIn(nameOf(bench.circuit, part));
  return conditionEdit(bench, name, { out: out.filter((id) => id !== part) });
}
