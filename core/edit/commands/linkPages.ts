import type { PartId } from "../../base/ids.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import { partAt } from "../../circuit/points.ts";
import type { Bench } from "../bench.ts";
import type { Change } from "../change.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf, goingOn } from "../editOf.ts";
import { labelNeeded } from "../typed.ts";

/**
 * Gives page links one name, by which they are one net and show where the others stand. Refuses `links-none`, `part-unknown`,
 * `link-kind` for another part, `label-empty`, `label-long` and `already-so`.
 */
export function linkPages(bench: Bench, ids: readonly PartId[], typed: string): Outcome<Edit> {
  if (ids.length === 0) return refuse("links-none");
  const name = labelNeeded(typed);
  if (!name.ok) return name;
  const changes: Change[] = [];
  for (const id of new Set(ids)) {
    const part = partAt(bench.circuit, id);
    if (!part) return refuse("part-unknown", { part: id });
    if (part.kind !== "page-link") return refuse("link-kind", { part: id });
    if (part.settings?.name === name.value) continue;
    const value = { ...part.settings, name: name.value };
    changes.push({ change: "item", list: "parts", id, field: "settings", value });
  }
  if (changes.length === 0) return alreadySo(`"${name.value}"`);
  return editOf(bench, WIRING_NAMES.linkPages(ids.join(", "), name.value), [goingOn(bench), ...changes]);
}
