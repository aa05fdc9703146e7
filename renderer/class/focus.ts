import type { PartId, WireId } from "../../core/base/ids.ts";
import type { Circuit, Condition, Scene } from "../../core/circuit/circuit.ts";
import { inFocus } from "../../core/lesson/scene.ts";
import { branchOf } from "../../core/live/branch.ts";
import type { BranchLine } from "../../core/live/branchRow.ts";

/** What a class is to look at: what the scene has in its focus, the branch of one load, or all of the page. */
export type Focus = { readonly is: "scene" } | { readonly is: "page" } | { readonly is: "load"; readonly load: PartId };

/** Ids of parts and wires. */
export type Ids = ReadonlySet<PartId | WireId>;

/** What is drawn in full and named; null for all of the page, as where a scene says nothing of it. */
export function focusIds(circuit: Circuit, focus: Focus, scene: Scene | null, condition: Condition): Ids | null {
  if (focus.is === "page") return null;
  if (focus.is === "scene") return scene && inFocus(circuit, scene);
  const branch = branchOf(circuit, { load: focus.load, condition });
  return branch.ok ? new Set(branch.value.lines.flatMap(idsOf)) : new Set([focus.load]);
}

function idsOf({ rows }: BranchLine): readonly string[] {
  return rows.flatMap((row) => (row.is === "wire" ? [row.wire] : row.is === "link" ? row.parts : [row.part]));
}

/** The page that holds most of what is in focus; the one that is shown where it holds as much, and where all is. */
export function pageOf({ placement }: Circuit, ids: Ids | null, shown: string): string {
  const counts = new Map<string, number>([[shown, 0]]);
  for (const id of ids ?? []) {
    const page = placement.parts[id]?.page;
    if (page !== undefined) counts.set(page, (counts.get(page) ?? 0) + 1);
  }
  return [...counts].toSorted(([, one], [, other]) => other - one)[0]![0];
}
