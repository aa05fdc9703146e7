import { type Outcome, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import { partAt } from "../../circuit/points.ts";
import type { Bench } from "../bench.ts";
import type { Change } from "../change.ts";
import type { Edit } from "../edit.ts";
import { editOf } from "../editOf.ts";
import { pageOf } from "../pageFields.ts";
import { placing } from "../standOnPage.ts";
import { untying } from "../tying.ts";

/**
 * Takes a page out, and the printed pages under it. Parts that stand on it go to the page that is named, each to the same
 * place there. Refuses `page-unknown`, `page-in-use` while parts stand on it and no other page is named, and `off-the-page`.
 */
export function removePage(bench: Bench, id: string, goal?: string): Outcome<Edit> {
  const { circuit } = bench;
  const page = pageOf(circuit, id);
  if (!page.ok) return page;
  const standing = Object.entries(circuit.placement.parts).filter(([, place]) => place.page === id);
  if (standing.length > 0 && (goal === undefined || goal === id)) {
    return refuse("page-in-use", { page: page.value.title, parts: standing.length });
  }
  const changes: Change[] = [
    ...untying(
      circuit,
      (page.value.underlays ?? []).map((underlay) => underlay.id),
    ),
  ];
  for (const [part, place] of standing) {
    const placed = placing(circuit, partAt(circuit, part)!, { ...place, page: goal! });
    if (!placed.ok) return placed;
    changes.push(placed.value);
  }
  changes.push({ change: "remove", list: "pages", id });
  return editOf(bench, WIRING_NAMES.removePage(page.value.title), changes);
}
