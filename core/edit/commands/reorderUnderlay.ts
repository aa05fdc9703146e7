import { type Outcome, refuse } from "../../base/outcome.ts";
import { PRINTED_NAMES } from "../../base/words/printed.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";
import { lyingOf } from "../underlayFields.ts";

/**
 * Lays a printed page at another place among those of its page, 0 the lowest. Refuses `underlay-unknown`, `edit-place` and
 * `already-so`.
 */
export function reorderUnderlay(bench: Bench, id: string, to: number): Outcome<Edit> {
  const lying = lyingOf(bench.circuit, id);
  if (!lying.ok) return lying;
  const { page, underlay } = lying.value;
  const underlays = page.underlays!;
  if (!Number.isInteger(to) || to < 0 || to >= underlays.length) {
    return refuse("edit-place", { what: "printed page", at: to });
  }
  if (underlays[to] === underlay) return alreadySo(underlay.title);
  const others = underlays.filter((each) => each !== underlay);
  const value = [...others.slice(0, to), underlay, ...others.slice(to)];
  return editOf(bench, PRINTED_NAMES.reorder(underlay.title), [
    { change: "item", list: "pages", id: page.id, field: "underlays", value },
  ]);
}
