import { type Outcome, refuse } from "../../base/outcome.ts";
import { PRINTED_NAMES } from "../../base/words/printed.ts";
import { scaled } from "../../drawing/projection.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { lieEdit, looseOf } from "../underlayFields.ts";

const LIMITS = { min: 0.05, max: 20 } as const;

/** Makes a printed page so many times as large, round the middle of its box. Refuses `scale-limits`, and as `moveUnderlay` does. */
export function scaleUnderlay(bench: Bench, id: string, factor: number): Outcome<Edit> {
  const lying = looseOf(bench.circuit, id);
  if (!lying.ok) return lying;
  if (!(factor >= LIMITS.min && factor <= LIMITS.max)) return refuse("scale-limits", { ...LIMITS, value: factor });
  const { underlay } = lying.value;
  const corners = scaled(underlay.corners, factor);
  return lieEdit(bench, lying.value, PRINTED_NAMES.scale(underlay.title), { ...underlay, corners });
}
