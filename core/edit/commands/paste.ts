import type { Outcome } from "../../base/outcome.ts";
import type { GridUnits } from "../../base/units.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import { kindOf } from "../../parts/catalogue.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { editOf, goingOn, lowerCase } from "../editOf.ts";
import type { Fragment } from "../fragment.ts";
import { inserting } from "../inserting.ts";

/**
 * Puts a fragment on a page with its top left in a place, or beside what stands there; what clashes gets new ids. Parts of a circuit with other volts
 * keep what is written of them, and a colour without a word in the circuit's codes is left out: the name of the edit says
 * both. Refuses `nothing-chosen`, `part-kind`, `page-unknown` and `off-the-page`.
 */
export function paste(bench: Bench, fragment: Fragment, page: string, x: GridUnits, y: GridUnits): Outcome<Edit> {
  const landing = { x: Math.round(x), y: Math.round(y), pageOf: () => page };
  const inserted = inserting(bench.circuit, fragment, landing);
  if (!inserted.ok) return inserted;
  const { changes, parts, coloursLost } = inserted.value;
  const title = lowerCase(kindOf(fragment.parts[0]!.kind)!.title);
  const name = EDIT_NAMES.paste(parts.length === 1 ? `${title} ${parts[0]}` : EDIT_NAMES.parts(parts.length), {
    volts: fragment.nominalVolts === bench.circuit.nominalVolts ? null : fragment.nominalVolts,
    coloursLost,
  });
  return editOf(bench, name, [goingOn(bench), ...changes]);
}
