import { type Outcome, ok } from "../../base/outcome.ts";
import type { Amps } from "../../base/units.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import { sleepingAmpsOf } from "../../diagnose/drain.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";

/** Notes the expected sleeping current as typed; the empty text takes it back. Refuses `sleeping-amps` and `already-so`. */
export function setSleepingAmps(bench: Bench, typed: string): Outcome<Edit> {
  const amps: Outcome<Amps | null> = typed.trim() === "" ? ok(null) : sleepingAmpsOf(typed);
  if (!amps.ok) return amps;
  if (amps.value === bench.sleepingAmps) return alreadySo("The sleeping current");
  return editOf(bench, EDIT_NAMES.setSleepingAmps, [{ change: "bench", field: "sleepingAmps", value: amps.value }]);
}
