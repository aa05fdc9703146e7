import { type Outcome, ok, refuse } from "../../base/outcome.ts";
import { PRINTED_NAMES } from "../../base/words/printed.ts";
import type { Underlay } from "../../circuit/circuit.ts";
import { cutOf, ontoPage } from "../../circuit/underlays.ts";
import { mappedQuad, projectionOf, type Quad, rectangle } from "../../drawing/projection.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { lieEdit, looseOf } from "../underlayFields.ts";

/** What is left of a printed page, as shares of its present sides: 0, 0, 1, 1 is all that is shown now. */
export interface Crop {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/**
 * Shows less of a printed page, or more of it up to the edge of the picture, where what is seen stays where it lies.
 * Without a crop it shows the whole picture again. Refuses as `placeUnderlay` does.
 */
export function cropUnderlay(bench: Bench, id: string, crop: Crop | null): Outcome<Edit> {
  const lying = looseOf(bench.circuit, id);
  if (!lying.ok) return lying;
  const { underlay } = lying.value;
  const cut = crop ? cropped(cutOf(underlay), crop) : ok(null);
  if (!cut.ok) return cut;
  const { cut: _, ...whole } = underlay;
  const next: Underlay = cut.value ? { ...underlay, cut: cut.value } : whole;
  const corners = mappedQuad(ontoPage(underlay), cutOf(next));
  return lieEdit(bench, lying.value, PRINTED_NAMES.crop(underlay.title), { ...next, corners });
}

/** The corners of a part of the sheet, by the map that lays the unit square on it. */
function cropped(cut: Quad, { left, top, right, bottom }: Crop): Outcome<Quad> {
  if (![left, top, right, bottom].every(Number.isFinite)) return refuse("corners-fold");
  return ok(mappedQuad(projectionOf(rectangle(0, 0, 1, 1), cut), rectangle(left, top, right - left, bottom - top)));
}
