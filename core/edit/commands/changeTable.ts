import type { PartId } from "../../base/ids.ts";
import { type Outcome, type Refusal, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import { terminalsOf } from "../../circuit/points.ts";
import type { Part, WhenThen } from "../../parts/kind.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf, nameOf } from "../editOf.ts";
import { followed } from "../following.ts";
import { partChanges } from "../partTerminals.ts";
import { joinsRefusal, terminalRefusal } from "../tableRules.ts";
import { moduleOf } from "./changePins.ts";

/** Most rows of a module's table, as a circuit file takes them. */
const MOST_ROWS = 400;

/**
 * Gives a module another when-then table; without rows it goes. Refuses `part-unknown`, `part-pins-idle`, `table-many`,
 * `pin-level`, a pin that the module does not have, `join-itself` and `already-so`.
 */
export function changeTable(bench: Bench, id: PartId, rows: readonly WhenThen[]): Outcome<Edit> {
  const { circuit } = bench;
  const part = moduleOf(circuit, id);
  if (!part.ok) return part;
  if (rows.length > MOST_ROWS) return refuse("table-many", { most: MOST_ROWS });
  const pins = terminalsOf(circuit, part.value);
  for (const row of rows) {
    const wrong = rowRefusal(part.value, row, pins);
    if (wrong) return { ok: false, refusal: wrong };
  }
  const { table: _, ...others } = part.value;
  const table = rows.map(({ when, joins }) => ({ when, joins }));
  const now: Part = table.length > 0 ? { ...part.value, table } : others;
  if (JSON.stringify(part.value.table ?? []) === JSON.stringify(table)) return alreadySo(nameOf(circuit, id));
  const changes = followed(bench, [], {}, partChanges(part.value, now));
  return changes.ok ? editOf(bench, WIRING_NAMES.changeTable(nameOf(circuit, id)), changes.value) : changes;
}

function rowRefusal(part: Part, { when, joins }: WhenThen, pins: readonly string[]): Refusal | null {
  for (const [pin, level] of Object.entries(when)) {
    const wrong = terminalRefusal(part, pin, pins);
    if (wrong) return wrong;
    if (level !== "high" && level !== "low") return refuse("pin-level", { pin, level }).refusal;
  }
  return joinsRefusal(part, joins, pins);
}
