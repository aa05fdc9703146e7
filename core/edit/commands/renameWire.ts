import type { WireId } from "../../base/ids.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";
import { idRefusal } from "../ids.ts";
import { renaming } from "../renaming.ts";

/**
 * Gives a wire another id; its bends and faults follow. Refuses `wire-unknown`, `already-so`, `id-empty`, `id-long`,
 * `id-spelling` and `id-taken`.
 */
export function renameWire(bench: Bench, id: WireId, typed: string): Outcome<Edit> {
  if (!bench.circuit.wires.some((wire) => wire.id === id)) return refuse("wire-unknown", { wire: id });
  const next = typed.trim();
  if (next === id) return alreadySo(EDIT_NAMES.wire(id));
  const refusal = idRefusal(bench.circuit, next, "wire");
  if (refusal) return { ok: false, refusal };
  return editOf(bench, EDIT_NAMES.rename(EDIT_NAMES.wire(id), next), renaming(bench, new Map([[id, next]])));
}
