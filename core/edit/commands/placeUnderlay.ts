import type { Outcome } from "../../base/outcome.ts";
import { PRINTED_NAMES } from "../../base/words/printed.ts";
import type { Quad } from "../../drawing/projection.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { lieEdit, looseOf } from "../underlayFields.ts";

/**
 * Lays a printed page with its four corners on these spots of the page, in millimetres. With a cut, the four corners of the
 * paper in a photograph in its pixels, it shows what lies between them: laid on a rectangle, the photograph is made square.
 * Refuses as `lieRefusal` does, and `underlay-unknown`, `underlay-locked` and `already-so`.
 */
export function placeUnderlay(bench: Bench, id: string, corners: Quad, cut?: Quad): Outcome<Edit> {
  const lying = looseOf(bench.circuit, id);
  if (!lying.ok) return lying;
  const { underlay } = lying.value;
  const name = cut ? PRINTED_NAMES.straighten : PRINTED_NAMES.place;
  return lieEdit(bench, lying.value, name(underlay.title), { ...underlay, corners, ...(cut && { cut }) });
}
