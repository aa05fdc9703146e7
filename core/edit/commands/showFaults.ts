import { type Outcome, refuse } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";
import { liveNow } from "../liveNow.ts";

/** Shows the circuit with its faults, or with nothing wrong. Refuses `no-faults` where both are the same, `already-so`. */
export function showFaults(bench: Bench, isShown: boolean): Outcome<Edit> {
  if (bench.showFaults === isShown) return alreadySo("What is shown");
  const { good, now } = liveNow(bench);
  if (bench.faults.length === 0 && good === now) return refuse("no-faults");
  return editOf(bench, EDIT_NAMES.showFaults(isShown), [{ change: "bench", field: "showFaults", value: isShown }]);
}
