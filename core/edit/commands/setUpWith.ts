import { type Outcome, ok } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { Condition } from "../../circuit/circuit.ts";
import { conditionRefusal, conditionText } from "../../live/condition.ts";
import { type Fault, faultText, parseFault } from "../../live/fault.ts";
import { type Before, type Bench, benchFor } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf, trimmed } from "../editOf.ts";

/**
 * Sets a whole condition up from rest and good fuses with exactly these faults, typed as `GP6:off`, and shows the circuit with
 * them: what was put in before is taken out. Refuses what the circuit does not have, what no fault can be, and `already-so`.
 */
export function setUpWith(bench: Bench, condition: Condition, typed: readonly string[]): Outcome<Edit> {
  const refusal = conditionRefusal(bench.circuit, condition);
  if (refusal) return { ok: false, refusal };
  const faults = faultsTyped(bench, typed);
  if (!faults.ok) return faults;
  const wanted = trimmed(condition);
  const [where, what] = [conditionText(wanted), faults.value.map(faultText).join(" ")];
  const isSame = where === conditionText(bench.condition) && what === bench.faults.map(faultText).join(" ");
  if (isSame && bench.showFaults && isFresh(bench.before)) return alreadySo(where === "" ? "rest" : where);
  return editOf(bench, EDIT_NAMES.setUpWith(where, what), [
    { change: "bench", field: "before", value: benchFor(bench.circuit).before },
    { change: "bench", field: "condition", value: wanted },
    { change: "bench", field: "faults", value: faults.value },
    { change: "bench", field: "showFaults", value: true },
  ]);
}

/** Whether nothing has happened yet: no relay has pulled in, no fuse has melted. */
function isFresh({ condition, good, now }: Before): boolean {
  return [condition, good, now].every((each) => Object.keys(each).length === 0);
}

function faultsTyped({ circuit }: Bench, typed: readonly string[]): Outcome<readonly Fault[]> {
  const faults: Fault[] = [];
  for (const each of typed) {
    const fault = parseFault(circuit, each);
    if (!fault.ok) return fault;
    faults.push(fault.value);
  }
  return ok(faults);
}
