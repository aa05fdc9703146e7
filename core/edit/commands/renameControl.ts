import type { PartId } from "../../base/ids.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import { controlKey, partAt } from "../../circuit/points.ts";
import { kindOf } from "../../parts/catalogue.ts";
import type { Control, Part } from "../../parts/kind.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf, nameOf } from "../editOf.ts";
import { followed, modesRenamed } from "../following.ts";
import { partChanges } from "../partTerminals.ts";
import { controlNameRefusal } from "../tableRules.ts";
import { labelOf } from "./relabelPart.ts";

/**
 * Gives a control of a panel another name and label, the empty label none; conditions, checks, scenes and faults follow. The
 * one control of a plain switch, whose name is empty, becomes the first of a panel. Refuses `part-unknown`,
 * `control-unknown`, `control-spelling`, `twice`, `label-long` and `already-so`.
 */
export function renameControl(
  bench: Bench,
  id: PartId,
  control: string,
  typed: string,
  words: string = "",
): Outcome<Edit> {
  const { circuit } = bench;
  const part = partAt(circuit, id);
  const kind = part && kindOf(part.kind);
  if (!kind) return refuse("part-unknown", { part: id });
  const was: readonly Control[] = part.controls ?? (part.positions ? [{ name: "", positions: part.positions }] : []);
  const at = was.findIndex(({ name }) => name === control);
  const found = was[at];
  if (!found) return refuse("control-unknown", { control: `${id}.${control}` });
  const name = typed.trim();
  const refusal = controlNameRefusal(name);
  if (refusal) return { ok: false, refusal };
  if (name !== control && was.some((each) => each.name === name)) return refuse("twice", { what: "control", id: name });
  const label = labelOf(words);
  if (!label.ok) return label;
  if (name === control && label.value === (found.label ?? "")) return alreadySo(nameOf(circuit, id));
  const next: Control = { name, ...(label.value !== "" && { label: label.value }), positions: found.positions };
  const { positions: _, ...others } = part;
  const now: Part = { ...others, controls: was.map((each, index) => (index === at ? next : each)) };
  const renames = {
    controls: new Map([[controlKey(part, found), controlKey(now, next)]]),
    modes: new Map([[id, modesRenamed(circuit, part, now)]]),
  };
  const changes = followed(bench, partChanges(part, now), renames, []);
  return changes.ok ? editOf(bench, WIRING_NAMES.renameControl(nameOf(circuit, id), name), changes.value) : changes;
}
