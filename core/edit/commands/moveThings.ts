import type { PartId } from "../../base/ids.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import type { GridUnits } from "../../base/units.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { Bench } from "../bench.ts";
import type { Move } from "../bendsFollowing.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf, nameOfAll } from "../editOf.ts";
import { placeOf } from "../standOnPage.ts";
import { movingAll } from "../together.ts";

/**
 * Moves parts by so much to the right and down, each on its page; wires between them go along whole, others follow.
 * Refuses `nothing-chosen`, `part-unknown`, `not-placed`, `off-the-page`, `part-hidden` and `already-so`.
 */
export function moveThings(bench: Bench, ids: readonly PartId[], dx: GridUnits, dy: GridUnits): Outcome<Edit> {
  const { circuit } = bench;
  const [across, down] = [Math.round(dx), Math.round(dy)];
  if (ids.length === 0) return refuse("nothing-chosen");
  const moves: Move[] = [];
  for (const id of new Set(ids)) {
    const found = placeOf(circuit, id);
    if (!found.ok) return found;
    const { part, place: from } = found.value;
    moves.push({ part, from, to: { ...from, x: from.x + across, y: from.y + down } });
  }
  const name = nameOfAll(circuit, ids);
  if (across === 0 && down === 0) return alreadySo(name);
  const changes = movingAll(circuit, moves);
  return changes.ok ? editOf(bench, EDIT_NAMES.movePart(name), changes.value) : changes;
}
