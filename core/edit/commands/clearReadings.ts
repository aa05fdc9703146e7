import { type Outcome, refuse } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { editOf } from "../editOf.ts";

/** Begins anew: no readings, and no battery volts. Refuses `readings-none` where there are none. */
export function clearReadings(bench: Bench): Outcome<Edit> {
  if (bench.readings.length === 0 && bench.batteryVolts === null && bench.wiggled.length === 0)
    return refuse("readings-none");
  return editOf(bench, EDIT_NAMES.clearReadings, [
    { change: "bench", field: "readings", value: [] },
    { change: "bench", field: "batteryVolts", value: null },
    { change: "bench", field: "wiggled", value: [] },
  ]);
}
