import type { PartId } from "../../base/ids.ts";
import type { Outcome } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { PartPlace } from "../../circuit/circuit.ts";
import type { Bench } from "../bench.ts";
import { bendsAlong } from "../bendsFollowing.ts";
import type { Edit } from "../edit.ts";
import { editOf, nameOfAll } from "../editOf.ts";
import { placingAll, type Standing, together } from "../together.ts";

const TURNS = [0, 90, 180, 270] as const;

/**
 * Turns parts by a quarter about their common middle, clockwise or the other way; wires between them turn along, others
 * are laid anew. Four turns bring all back. Refuses `nothing-chosen`, `part-unknown`, `not-placed`, `pages-several` and
 * `off-the-page`.
 */
export function turnThings(bench: Bench, ids: readonly PartId[], way: "clockwise" | "back"): Outcome<Edit> {
  const { circuit } = bench;
  const found = together(circuit, ids, 1);
  if (!found.ok) return found;
  const { parts, box } = found.value;
  const isClockwise = way === "clockwise";
  // A half grid unit is cut off towards zero both ways, so that turning back undoes turning.
  const shift = Math.trunc((box.right - box.left - (box.bottom - box.top)) / 2);
  const [left, top] = [box.left + shift, box.top - shift];
  const turned = (x: number, y: number): readonly [number, number] =>
    isClockwise ? [left + box.bottom - y, top + x - box.left] : [left + y - box.top, top + box.right - x];
  const moves = parts.map(({ part, place, outline }: Standing) => {
    const { turn = 0, ...rest } = place;
    const next = TURNS[(TURNS.indexOf(turn) + (isClockwise ? 1 : 3)) % 4]!;
    // The corner that comes to lie at the top left.
    const [x, y] = isClockwise ? turned(outline.left, outline.bottom) : turned(outline.right, outline.top);
    const to: PartPlace = { ...rest, x, y, ...(next !== 0 && { turn: next }) };
    return { part, to };
  });
  const placed = placingAll(circuit, moves);
  if (!placed.ok) return placed;
  const bends = bendsAlong(
    circuit,
    parts.map(({ part }) => part.id),
    turned,
  );
  return editOf(bench, EDIT_NAMES.turnPart(nameOfAll(circuit, ids)), [...placed.value, ...bends]);
}
