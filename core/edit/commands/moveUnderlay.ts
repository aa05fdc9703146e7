import type { Outcome } from "../../base/outcome.ts";
import type { Millimetres } from "../../base/units.ts";
import { PRINTED_NAMES } from "../../base/words/printed.ts";
import { moved } from "../../drawing/projection.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { lieEdit, looseOf } from "../underlayFields.ts";

/**
 * Moves a printed page so far to the right and down. Refuses `underlay-unknown`, `underlay-locked`, `underlay-off-page`,
 * `corners-far` and `already-so`.
 */
export function moveUnderlay(bench: Bench, id: string, dx: Millimetres, dy: Millimetres): Outcome<Edit> {
  const lying = looseOf(bench.circuit, id);
  if (!lying.ok) return lying;
  const { underlay } = lying.value;
  const corners = moved(underlay.corners, dx, dy);
  return lieEdit(bench, lying.value, PRINTED_NAMES.move(underlay.title), { ...underlay, corners });
}
