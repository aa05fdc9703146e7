import type { PartId } from "../../base/ids.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import type { GridUnits } from "../../base/units.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import { partAt } from "../../circuit/points.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { editOf, goingOn, nameOfAll } from "../editOf.ts";
import { copied, originOf } from "../fragment.ts";
import { inserting } from "../inserting.ts";

/**
 * Draws parts once more, each on its page and so much to the right and down or farther beside what stands there, with the wires between them and the connectors
 * that carry them alone, all under new ids. Refuses `nothing-chosen`, `part-unknown` and `off-the-page`.
 */
export function duplicateThings(bench: Bench, ids: readonly PartId[], dx: GridUnits, dy: GridUnits): Outcome<Edit> {
  const { circuit } = bench;
  const unknown = ids.find((id) => !partAt(circuit, id));
  if (unknown !== undefined) return refuse("part-unknown", { part: unknown });
  const origin = originOf(circuit, ids);
  const inserted = inserting(circuit, copied(circuit, ids), {
    x: origin.x + Math.round(dx),
    y: origin.y + Math.round(dy),
    pageOf: (part) => circuit.placement.parts[part]!.page,
  });
  if (!inserted.ok) return inserted;
  return editOf(bench, EDIT_NAMES.duplicateThings(nameOfAll(circuit, ids)), [
    goingOn(bench),
    ...inserted.value.changes,
  ]);
}
