import { type Outcome, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";
import { pageOf } from "../pageFields.ts";

/** Puts a page at another place among the pages, counted from 0. Refuses `page-unknown`, `edit-place` and `already-so`. */
export function reorderPage(bench: Bench, id: string, to: number): Outcome<Edit> {
  const { pages } = bench.circuit;
  const page = pageOf(bench.circuit, id);
  if (!page.ok) return page;
  if (!Number.isInteger(to) || to < 0 || to >= pages.length) return refuse("edit-place", { what: "page", at: to });
  if (pages[to] === page.value) return alreadySo(page.value.title);
  return editOf(bench, WIRING_NAMES.reorderPage(page.value.title), [
    { change: "remove", list: "pages", id },
    { change: "add", list: "pages", at: to, item: page.value },
  ]);
}
