import type { Outcome } from "../../base/outcome.ts";
import { PRINTED_NAMES } from "../../base/words/printed.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { editOf } from "../editOf.ts";
import { untying } from "../tying.ts";
import { lyingOf } from "../underlayFields.ts";

/** Takes a printed page away; what is tied to it is tied no more. Refuses `underlay-unknown`. */
export function removeUnderlay(bench: Bench, id: string): Outcome<Edit> {
  const lying = lyingOf(bench.circuit, id);
  if (!lying.ok) return lying;
  const { page, underlay } = lying.value;
  const left = page.underlays!.filter((each) => each !== underlay);
  return editOf(bench, PRINTED_NAMES.remove(underlay.title), [
    ...untying(bench.circuit, [id]),
    { change: "item", list: "pages", id: page.id, field: "underlays", ...(left.length > 0 && { value: left }) },
  ]);
}
