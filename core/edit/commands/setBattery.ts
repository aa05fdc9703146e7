import type { Outcome } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, conditionEdit } from "../editOf.ts";

/** Takes every battery off, or puts them on. Refuses `already-so`. */
export function setBattery(bench: Bench, isOff: boolean): Outcome<Edit> {
  if ((bench.condition.batteryOff ?? false) === isOff) return alreadySo(isOff ? "The battery off" : "The battery on");
  return conditionEdit(bench, EDIT_NAMES.battery(isOff), { batteryOff: isOff });
}
