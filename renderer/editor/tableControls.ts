import type { Bench } from "../../core/edit/bench.ts";
import { changePositions } from "../../core/edit/commands/changePositions.ts";
import { positionAdded } from "../../core/edit/positionTable.ts";
import { kindOf } from "../../core/parts/catalogue.ts";
import type { Control, Part } from "../../core/parts/kind.ts";
import { freshPosition } from "./tableWords.ts";

/** The one control of a switch that writes none yet. */
const UNWRITTEN: readonly Control[] = [{ name: "", positions: [{ name: "rest", joins: [] }] }];

/**
 * The controls of a part whose continuity table can be written; empty where its kind has none, or keeps its own, as a
 * potentiometer does.
 */
export function tableControls(bench: Bench, part: Part): readonly Control[] {
  const kind = kindOf(part.kind);
  if (kind?.role !== "control" && kind?.role !== "load") return [];
  const written = kind.controls(part);
  const controls = written.length > 0 ? written : kind.name === "switch" ? UNWRITTEN : [];
  return controls.every((control) => isWritten(bench, part, control)) ? controls : [];
}

/** Asking changes nothing: a kind that takes a table would take a longer one too. */
function isWritten(bench: Bench, part: Part, { name, positions }: Control): boolean {
  const longer = positionAdded(positions, freshPosition(positions));
  const edit = changePositions(bench, part.id, name, longer);
  return edit.ok || edit.refusal.code !== "part-positions-idle";
}
