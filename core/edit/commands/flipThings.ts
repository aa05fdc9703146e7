import type { PartId } from "../../base/ids.ts";
import type { Outcome } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { PartPlace } from "../../circuit/circuit.ts";
import type { Bench } from "../bench.ts";
import { bendsAlong } from "../bendsFollowing.ts";
import type { Edit } from "../edit.ts";
import { editOf, nameOfAll } from "../editOf.ts";
import { placingAll, together } from "../together.ts";

/** What a turn becomes when left and right change places on the page. */
const MIRRORED = { 0: 0, 90: 270, 180: 180, 270: 90 } as const;

/**
 * Flips parts left to right as they stand on the page, about their common middle; wires between them flip along, others
 * are laid anew. Refuses `nothing-chosen`, `part-unknown`, `not-placed`, `pages-several` and `off-the-page`.
 */
export function flipThings(bench: Bench, ids: readonly PartId[]): Outcome<Edit> {
  const { circuit } = bench;
  const found = together(circuit, ids, 1);
  if (!found.ok) return found;
  const { parts, box } = found.value;
  const flipped = (x: number): number => box.left + box.right - x;
  const moves = parts.map(({ part, place, outline }) => {
    const { turn = 0, flip = false, ...rest } = place;
    const next = MIRRORED[turn];
    const x = flipped(outline.right);
    const to: PartPlace = { ...rest, x, ...(next !== 0 && { turn: next }), ...(!flip && { flip: true }) };
    return { part, to };
  });
  const placed = placingAll(circuit, moves);
  if (!placed.ok) return placed;
  const bends = bendsAlong(
    circuit,
    parts.map(({ part }) => part.id),
    (x, y) => [flipped(x), y],
  );
  return editOf(bench, EDIT_NAMES.flipPart(nameOfAll(circuit, ids)), [...placed.value, ...bends]);
}
