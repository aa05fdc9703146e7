import type { PartId } from "../../base/ids.ts";
import type { Outcome } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { PartPlace } from "../../circuit/circuit.ts";
import type { Bench } from "../bench.ts";
import { bendsDropped } from "../bendsFollowing.ts";
import type { Edit } from "../edit.ts";
import { editOf, nameOf } from "../editOf.ts";
import { placeOf, placing, shapeAt } from "../standOnPage.ts";

const TURNS = [0, 90, 180, 270] as const;

/**
 * Turns a part by a quarter about its middle, clockwise or the other way; its wires are laid anew. Four turns bring it
 * back. Refuses `part-unknown`, `not-placed` and `off-the-page`.
 */
export function turnPart(bench: Bench, id: PartId, way: "clockwise" | "back"): Outcome<Edit> {
  const { circuit } = bench;
  const found = placeOf(circuit, id);
  if (!found.ok) return found;
  const { part, place } = found.value;
  const { left, top, right, bottom } = shapeAt(circuit, part, place).outline;
  // A half grid unit is cut off towards zero both ways, so that turning back undoes turning.
  const shift = Math.trunc((right - left - (bottom - top)) / 2);
  const { turn = 0, ...rest } = place;
  const next = TURNS[(TURNS.indexOf(turn) + (way === "clockwise" ? 1 : 3)) % 4]!;
  const to: PartPlace = { ...rest, x: place.x + shift, y: place.y - shift, ...(next !== 0 && { turn: next }) };
  const placed = placing(circuit, part, to);
  if (!placed.ok) return placed;
  return editOf(bench, EDIT_NAMES.turnPart(nameOf(circuit, id)), [placed.value, ...bendsDropped(circuit, part)]);
}
