import type { Outcome } from "../../base/outcome.ts";
import { PRINTED_NAMES } from "../../base/words/printed.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { labelNeeded } from "../typed.ts";
import { lyingOf, underlayEdit } from "../underlayFields.ts";

/** Gives a printed page another title. Refuses `underlay-unknown`, `label-empty`, `label-long` and `already-so`. */
export function retitleUnderlay(bench: Bench, id: string, typed: string): Outcome<Edit> {
  const lying = lyingOf(bench.circuit, id);
  if (!lying.ok) return lying;
  const title = labelNeeded(typed);
  if (!title.ok) return title;
  const { underlay } = lying.value;
  return underlayEdit(bench, lying.value, PRINTED_NAMES.retitle(underlay.title), { ...underlay, title: title.value });
}
