import { type Outcome, refuse } from "../../base/outcome.ts";
import type { GridUnits } from "../../base/units.ts";
import { ASSEMBLY_WORDS, EDIT_NAMES } from "../../base/words/edit.ts";
import { ASSEMBLY_IDS, type AssemblyId, assembly } from "../assemblies.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { editOf, goingOn, lowerCase } from "../editOf.ts";
import { inserting } from "../inserting.ts";

/**
 * Draws a ready assembly with its top left in a place of a page, or beside what stands there, its parts and wires under
 * the next free designators. Refuses `assembly-unknown`, `page-unknown` and `off-the-page`.
 */
export function addAssembly(bench: Bench, id: AssemblyId, page: string, x: GridUnits, y: GridUnits): Outcome<Edit> {
  if (!ASSEMBLY_IDS.includes(id)) return refuse("assembly-unknown", { assembly: id });
  const landing = { x: Math.round(x), y: Math.round(y), pageOf: () => page };
  const inserted = inserting(bench.circuit, assembly(id, bench.circuit.nominalVolts), landing);
  if (!inserted.ok) return inserted;
  return editOf(bench, EDIT_NAMES.addPart(lowerCase(ASSEMBLY_WORDS[id])), [goingOn(bench), ...inserted.value.changes]);
}
