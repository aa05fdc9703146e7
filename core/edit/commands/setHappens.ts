import { type Outcome, refuse } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import { HAPPENS, type Happens } from "../../diagnose/comesAndGoes.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";
import { whenWith } from "../jobFields.ts";

/** Notes whether heat, water or bumps bring the complaint on, on the bench and in the job in hand. Refuses `wiggle-when` and `already-so`. */
export function setHappens(bench: Bench, happens: Happens, isSo: boolean): Outcome<Edit> {
  if (!HAPPENS.includes(happens)) return refuse("wiggle-when", { text: happens, words: HAPPENS.join(", ") });
  if (bench.happens.includes(happens) === isSo) return alreadySo(happens);
  const value = HAPPENS.filter((each) => (each === happens ? isSo : bench.happens.includes(each)));
  const { job } = bench;
  const told = job && { ...job, when: whenWith(job.when, happens, isSo) };
  return editOf(bench, EDIT_NAMES.setHappens, [
    { change: "bench", field: "happens", value },
    ...(told ? [{ change: "bench", field: "job", value: told } as const] : []),
  ]);
}
