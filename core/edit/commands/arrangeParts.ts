import type { PartId } from "../../base/ids.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { PartPlace } from "../../circuit/circuit.ts";
import type { Bench } from "../bench.ts";
import { bendsDropped, type Move } from "../bendsFollowing.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf, nameOfAll } from "../editOf.ts";
import { placeOf } from "../standOnPage.ts";
import { placingAll } from "../together.ts";

/** Where parts are to come to stand, by part. */
export type ArrangedPlaces = Readonly<Record<PartId, PartPlace>>;

/**
 * Puts parts where a layout has them; the wires of those that move or turn are laid anew. Refuses `nothing-chosen`,
 * `part-unknown`, `not-placed`, `part-pinned`, `page-unknown`, `off-the-page` and `already-so`.
 */
export function arrangeParts(bench: Bench, places: ArrangedPlaces): Outcome<Edit> {
  const { circuit } = bench;
  const ids = Object.keys(places);
  if (ids.length === 0) return refuse("nothing-chosen");
  const moves: Move[] = [];
  for (const id of ids) {
    const found = placeOf(circuit, id);
    if (!found.ok) return found;
    const { part, place: from } = found.value;
    const to = places[id]!;
    if (isThere(from, to)) continue;
    if (from.pinned === true) return refuse("part-pinned", { part: id });
    moves.push({ part, from, to });
  }
  if (moves.length === 0) return alreadySo(nameOfAll(circuit, ids));
  const placed = placingAll(circuit, moves);
  if (!placed.ok) return placed;
  const dropped = new Map(
    moves.flatMap(({ part }) => bendsDropped(circuit, part)).map((change) => [JSON.stringify(change), change]),
  );
  return editOf(bench, EDIT_NAMES.arrangeParts(nameOfAll(circuit, ids)), [...placed.value, ...dropped.values()]);
}

function isThere(from: PartPlace, to: PartPlace): boolean {
  const isTurnedAlike = (from.turn ?? 0) === (to.turn ?? 0) && (from.flip ?? false) === (to.flip ?? false);
  return from.page === to.page && from.x === to.x && from.y === to.y && isTurnedAlike;
}
