import type { PartId } from "../../base/ids.ts";
import { type Outcome, ok, refuse } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import { partAt } from "../../circuit/points.ts";
import type { Bench } from "../bench.ts";
import type { Change } from "../change.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf, nameOf } from "../editOf.ts";

/** Most characters of a label, as a circuit file takes it. */
export const MOST_LABEL = 160;

/** A label as typed, with single spaces. Refuses `label-long`. */
export function labelOf(typed: string): Outcome<string> {
  const label = typed.trim().replace(/\s+/g, " ");
  return label.length > MOST_LABEL ? refuse("label-long", { most: MOST_LABEL, length: label.length }) : ok(label);
}

/** Gives a part another label; the empty text takes it away. Refuses `part-unknown`, `label-long` and `already-so`. */
export function relabelPart(bench: Bench, id: PartId, typed: string): Outcome<Edit> {
  const part = partAt(bench.circuit, id);
  if (!part) return refuse("part-unknown", { part: id });
  const read = labelOf(typed);
  if (!read.ok) return read;
  const label = read.value;
  if ((part.label ?? "") === label) return alreadySo(nameOf(bench.circuit, id));
  const change: Change = { change: "item", list: "parts", id, field: "label", ...(label !== "" && { value: label }) };
  return editOf(bench, EDIT_NAMES.relabelPart(nameOf(bench.circuit, id)), [change]);
}
