import type { Outcome } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";
import { pageOf } from "../pageFields.ts";
import { labelNeeded } from "../typed.ts";

/** Gives a page another title. Refuses `page-unknown`, `label-empty`, `label-long` and `already-so`. */
export function retitlePage(bench: Bench, id: string, typed: string): Outcome<Edit> {
  const page = pageOf(bench.circuit, id);
  if (!page.ok) return page;
  const title = labelNeeded(typed);
  if (!title.ok) return title;
  if (page.value.title === title.value) return alreadySo(title.value);
  return editOf(bench, WIRING_NAMES.retitlePage(page.value.title), [
    { change: "item", list: "pages", id, field: "title", value: title.value },
  ]);
}
