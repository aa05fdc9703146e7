import { type Outcome, refuse } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import { CIRCUMSTANCES, type Circumstance } from "../../diagnose/comesAndGoes.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";

/** Notes whether the complaint shows hot, cold, wet or over bumps. Refuses `wiggle-when` and `already-so`. */
export function setWhen(bench: Bench, one: Circumstance, isSo: boolean): Outcome<Edit> {
  if (!CIRCUMSTANCES.includes(one)) return refuse("wiggle-when", { text: one, words: CIRCUMSTANCES.join(", ") });
  if (bench.when.includes(one) === isSo) return alreadySo(one);
  const value = CIRCUMSTANCES.filter((each) => (each === one ? isSo : bench.when.includes(each)));
  return editOf(bench, EDIT_NAMES.setWhen, [{ change: "bench", field: "when", value }]);
}
