import type { Outcome } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, conditionEdit } from "../editOf.ts";

/** Starts the engine, or stops it. Refuses `already-so`. */
export function setEngine(bench: Bench, isRunning: boolean): Outcome<Edit> {
  if ((bench.condition.running ?? false) === isRunning) return alreadySo("The engine");
  return conditionEdit(bench, EDIT_NAMES.engine(isRunning), { running: isRunning });
}
