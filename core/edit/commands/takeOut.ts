import type { PartId } from "../../base/ids.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import { partAt } from "../../circuit/points.ts";
import { kindOf } from "../../parts/catalogue.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, conditionEdit, nameOf } from "../editOf.ts";

/**
 * Takes a part out of its place: a fuse, a relay, a lamp. Refuses `part-unknown`, `already-so`, and `stays-in` for
 * what only joins and for sources: a battery is taken off, a splice is cut.
 */
export function takeOut(bench: Bench, part: PartId): Outcome<Edit> {
  const found = partAt(bench.circuit, part);
  const kind = found && kindOf(found.kind);
  if (!kind) return refuse("part-unknown", { part });
  const out = bench.condition.out ?? [];
  if (out.includes(part)) return alreadySo(`${part} out`);
  if (kind.role === "join" || kind.role === "source")
    return refuse("stays-in", { part, kind: kind.title.toLowerCase() });
  return conditionEdit(bench, EDIT_NAMES.takeOut(nameOf(bench.circuit, part)), { out: [...out, part] });
}
