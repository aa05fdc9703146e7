import type { PartId } from "../../base/ids.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { Bench } from "../bench.ts";
import type { Change } from "../change.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf, nameOfAll } from "../editOf.ts";
import { placeOf } from "../standOnPage.ts";

/**
 * Pins parts where they stand, so that arranging leaves them there, or takes the pins out. By hand they can be moved as
 * before. Refuses `nothing-chosen`, `part-unknown`, `not-placed` and `already-so`.
 */
export function pinParts(bench: Bench, ids: readonly PartId[], isPinned: boolean): Outcome<Edit> {
  const { circuit } = bench;
  if (ids.length === 0) return refuse("nothing-chosen");
  const changes: Change[] = [];
  for (const id of new Set(ids)) {
    const found = placeOf(circuit, id);
    if (!found.ok) return found;
    const { pinned, ...place } = found.value.place;
    if ((pinned ?? false) === isPinned) continue;
    const value = isPinned ? { ...place, pinned: true as const } : place;
    changes.push({ change: "entry", record: "places", key: id, value });
  }
  const name = nameOfAll(circuit, ids);
  if (changes.length === 0) return alreadySo(name);
  return editOf(bench, isPinned ? EDIT_NAMES.pinParts(name) : EDIT_NAMES.unpinParts(name), changes);
}
