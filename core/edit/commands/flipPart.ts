import type { PartId } from "../../base/ids.ts";
import type { Outcome } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { PartPlace } from "../../circuit/circuit.ts";
import type { Bench } from "../bench.ts";
import { bendsDropped } from "../bendsFollowing.ts";
import type { Edit } from "../edit.ts";
import { editOf, nameOf } from "../editOf.ts";
import { placeOf, placing } from "../standOnPage.ts";

/** Flips a part left to right before it is turned; its wires are laid anew. Refuses `part-unknown` and `not-placed`. */
export function flipPart(bench: Bench, id: PartId): Outcome<Edit> {
  const { circuit } = bench;
  const found = placeOf(circuit, id);
  if (!found.ok) return found;
  const { part, place } = found.value;
  const { flip = false, ...rest } = place;
  const to: PartPlace = { ...rest, ...(!flip && { flip: true }) };
  const placed = placing(circuit, part, to);
  if (!placed.ok) return placed;
  return editOf(bench, EDIT_NAMES.flipPart(nameOf(circuit, id)), [placed.value, ...bendsDropped(circuit, part)]);
}
