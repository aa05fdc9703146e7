import type { WireId } from "../../base/ids.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Bench } from "../bench.ts";
import type { Change } from "../change.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";
import { resizeWire } from "./resizeWire.ts";

/** Gives several wires one size, typed as for one. Refuses `wires-none`, `already-so`, and what `resizeWire` refuses. */
export function resizeWires(bench: Bench, ids: readonly WireId[], typed: string): Outcome<Edit> {
  if (ids.length === 0) return refuse("wires-none");
  const changes: Change[] = [];
  let count = 0;
  for (const id of new Set(ids)) {
    const edit = resizeWire(bench, id, typed);
    if (!edit.ok && edit.refusal.code === "already-so") continue;
    if (!edit.ok) return edit;
    changes.push(...edit.value.changes);
    count += 1;
  }
  return count === 0 ? alreadySo(ids.join(", ")) : editOf(bench, WIRING_NAMES.resizeWires(count), changes);
}
