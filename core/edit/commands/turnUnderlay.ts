import type { Outcome } from "../../base/outcome.ts";
import { PRINTED_NAMES } from "../../base/words/printed.ts";
import { turned } from "../../drawing/projection.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { lieEdit, looseOf } from "../underlayFields.ts";

/** Turns a printed page by a quarter round the middle of its box. Refuses as `moveUnderlay` does. */
export function turnUnderlay(bench: Bench, id: string, way: "clockwise" | "back"): Outcome<Edit> {
  const lying = looseOf(bench.circuit, id);
  if (!lying.ok) return lying;
  const { underlay } = lying.value;
  const corners = turned(underlay.corners, way === "clockwise" ? 1 : -1);
  return lieEdit(bench, lying.value, PRINTED_NAMES.turn(underlay.title), { ...underlay, corners });
}
