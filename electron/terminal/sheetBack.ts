import { type Outcome, ok, refuse } from "../../core/base/outcome.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { branchesFor } from "../../core/diagnose/branches.ts";
import { readEntry, readingsOf } from "../../core/diagnose/entry.ts";
import { probeOrder } from "../../core/diagnose/order.ts";
import type { Reading } from "../../core/diagnose/reading.ts";
import type { Seen } from "../../core/diagnose/seen.ts";
import type { Step } from "../../core/diagnose/step.ts";
import { branchSheets } from "../../core/paper/branchSheet.ts";
import { checklistSheets } from "../../core/paper/checklist.ts";
import type { KnownNow } from "../asked.ts";

/**
 * What was read in the rows of a printed checklist or branch sheet, typed as `7=11.9 8=0.1`. The code of a sheet follows from
 * what it shows, so the sheet is worked out anew: as the job stands, and as it stood after each of its readings before. Refuses
 * `sheet-unknown`, `sheet-no-rows`, and as `readEntry` does.
 */
export function rowsReadBack(
  circuit: Circuit,
  seen: Seen,
  known: KnownNow,
  code: string,
  typed: string,
): Outcome<readonly Reading[]> {
  if (typed === "") return refuse("sheet-no-rows", { code });
  const steps = stepsOn(circuit, seen, known, code.trim().toUpperCase());
  const [first] = steps ?? [];
  if (!steps || !first) return refuse("sheet-unknown", { code });
  const entries = readEntry(typed, first, steps, circuit.nominalVolts);
  return entries.ok ? ok(entries.value.flatMap((entry) => readingsOf(entry, null))) : entries;
}

/** The rows of the sheet with this code; null where neither this state of the job nor one before it prints such a sheet. */
function stepsOn(circuit: Circuit, seen: Seen, known: KnownNow, code: string): readonly Step[] | null {
  const { complaint, others } = seen;
  for (let count = known.readings.length; count >= 0; count--) {
    const then = { ...known, others, readings: known.readings.slice(0, count) };
    const order = probeOrder(circuit, complaint, then);
    if (order.suspects.length === 0) continue;
    if (checklistSheets({ circuit, order })[0]?.code === code) return order.steps;
    const branches = branchesFor(circuit, complaint, then);
    if (branches.ok && branchSheets({ circuit, branches: branches.value })[0]?.code === code)
      return branches.value.rows.map(({ step }) => step);
  }
  return null;
}
