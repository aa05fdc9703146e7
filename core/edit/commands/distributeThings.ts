import type { PartId } from "../../base/ids.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { Bounds } from "../../drawing/measure.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf, nameOfAll } from "../editOf.ts";
import { movingAll, together } from "../together.ts";

/**
 * Spreads parts so that the gaps between them are alike, across or down, to one grid unit; the two outermost stay and wires
 * follow. Refuses `parts-few` under three, `part-unknown`, `not-placed`, `pages-several`, `no-room` where they are wider
 * than the room between the outermost, `off-the-page`, `part-hidden` and `already-so`.
 */
export function distributeThings(bench: Bench, ids: readonly PartId[], way: "across" | "down"): Outcome<Edit> {
  const { circuit } = bench;
  const found = together(circuit, ids, 3);
  if (!found.ok) return found;
  const isAcross = way === "across";
  const from = (outline: Bounds): number => (isAcross ? outline.left : outline.top);
  const to = (outline: Bounds): number => (isAcross ? outline.right : outline.bottom);
  const middle = (outline: Bounds): number => from(outline) + to(outline);
  const row = [...found.value.parts].sort((one, other) => middle(one.outline) - middle(other.outline));
  const [first, last] = [row[0]!.outline, row.at(-1)!.outline];
  const taken = row.reduce((sum, { outline }) => sum + to(outline) - from(outline), 0);
  const gap = (to(last) - from(first) - taken) / (row.length - 1);
  const name = nameOfAll(circuit, ids);
  if (gap < 0) return refuse("no-room", { what: name });
  let next = from(first);
  const moves = row.flatMap(({ part, place, outline }) => {
    const shift = Math.round(next) - from(outline);
    next += to(outline) - from(outline) + gap;
    if (shift === 0) return [];
    return [{ part, from: place, to: isAcross ? { ...place, x: place.x + shift } : { ...place, y: place.y + shift } }];
  });
  if (moves.length === 0) return alreadySo(name);
  const changes = movingAll(circuit, moves);
  return changes.ok ? editOf(bench, EDIT_NAMES.distributeThings(name), changes.value) : changes;
}
