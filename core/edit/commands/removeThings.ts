import type { Outcome } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { editOf, nameOfAll } from "../editOf.ts";
import { removal } from "../removal.ts";
import { trimming } from "../trim.ts";

/**
 * Takes out parts, wires and connectors, mixed, with all that hangs on them and all that names them: wires of the parts,
 * cavities, reach, function checks, scenes, faults and what the bench holds. Where only a connector goes, its wires end
 * on the terminals. A splice left with two legs stays. Refuses `nothing-chosen` and `thing-unknown`.
 */
export function removeThings(bench: Bench, ids: readonly string[]): Outcome<Edit> {
  const taken = removal(bench.circuit, ids);
  if (!taken.ok) return taken;
  const trimmed = trimming(bench, taken.value);
  if (!trimmed.ok) return trimmed;
  const { changes, checksGone } = trimmed.value;
  return editOf(bench, EDIT_NAMES.removeThings(nameOfAll(bench.circuit, ids), checksGone), changes);
}
