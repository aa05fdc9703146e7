import type { PartId } from "../../base/ids.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import { isInLine, partAt, terminalsOf } from "../../circuit/points.ts";
import type { Part } from "../../parts/kind.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf, nameOf } from "../editOf.ts";
import {
  renamedInPlace,
  terminalChanges,
  terminalNamesRefusal,
  terminalsRenamed,
  terminalsTrimmed,
} from "../partTerminals.ts";

/**
 * Gives a part other terminals, in order. A name that another takes the place of is renamed, with wires, cavities, joins and
 * all that names it; a terminal that goes takes its wires along. Refuses `part-unknown`, `terminals-in-line` for a joint,
 * `terminals-count`, `cavity-spelling`, `twice`, terminals that the kind cannot draw, and `already-so`.
 */
export function changeTerminals(bench: Bench, id: PartId, typed: readonly string[]): Outcome<Edit> {
  const { circuit } = bench;
  const part = partAt(circuit, id);
  if (!part) return refuse("part-unknown", { part: id });
  if (isInLine(part)) return refuse("terminals-in-line", { part: id });
  const names = typed.map((name) => name.trim());
  const refusal = terminalNamesRefusal(names);
  if (refusal) return { ok: false, refusal };
  const was = terminalsOf(circuit, part);
  if (was.join("\n") === names.join("\n")) return alreadySo(nameOf(circuit, id));
  const renamed = terminalsRenamed(part, renamedInPlace(was, names));
  const now: Part = { ...terminalsTrimmed(renamed, new Set(names)), terminals: names };
  const changes = terminalChanges(bench, part, now, names);
  return changes.ok ? editOf(bench, WIRING_NAMES.changeTerminals(nameOf(circuit, id)), changes.value) : changes;
}
