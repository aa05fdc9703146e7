import { type Outcome, ok } from "../../base/outcome.ts";
import type { Volts } from "../../base/units.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import { batteryVoltsOf } from "../../diagnose/readingText.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";

/** Notes the battery's volts at rest as typed; the empty text takes them back. Refuses `battery-volts` and `already-so`. */
export function setBatteryVolts(bench: Bench, typed: string): Outcome<Edit> {
  const volts: Outcome<Volts | null> = typed.trim() === "" ? ok(null) : batteryVoltsOf(bench.circuit, typed);
  if (!volts.ok) return volts;
  if (volts.value === bench.batteryVolts) return alreadySo("battery");
  return editOf(bench, EDIT_NAMES.setBatteryVolts, [{ change: "bench", field: "batteryVolts", value: volts.value }]);
}
