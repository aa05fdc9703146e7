import type { PartId } from "../../base/ids.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import { partAt } from "../../circuit/points.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf, nameOf } from "../editOf.ts";
import { idRefusal } from "../ids.ts";
import { renaming } from "../renaming.ts";

/**
 * Gives a part another designator; all that names it follows, the face of an in-line joint too. Refuses `part-unknown`,
 * `already-so`, `id-empty`, `id-long`, `id-spelling` and `id-taken`.
 */
export function renamePart(bench: Bench, id: PartId, typed: string): Outcome<Edit> {
  if (!partAt(bench.circuit, id)) return refuse("part-unknown", { part: id });
  const next = typed.trim();
  if (next === id) return alreadySo(nameOf(bench.circuit, id));
  const refusal = idRefusal(bench.circuit, next, "part");
  if (refusal) return { ok: false, refusal };
  const name = EDIT_NAMES.rename(nameOf(bench.circuit, id), next);
  return editOf(bench, name, renaming(bench, new Map([[id, next]])));
}
