import type { Outcome } from "../../base/outcome.ts";
import { WEIGHING_NAMES } from "../../base/words/weighing.ts";
import { factorOf } from "../../diagnose/weightText.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";

/** Sets how many times as likely something on this circuit is as guessed, as typed, and why. Refuses as `factorOf`, and `already-so`. */
export function setWeight(bench: Bench, of: string, typed: string, source: string): Outcome<Edit> {
  const read = factorOf(of, typed, source, bench.circuit);
  if (!read.ok) return read;
  const before = bench.weights.find((each) => each.of === of);
  if (before?.factor === read.value.factor && before.source === read.value.source) return alreadySo(of);
  const weights = [...bench.weights.filter((each) => each !== before), read.value];
  const name = WEIGHING_NAMES.setWeight(of, read.value.factor);
  return editOf(bench, name, [{ change: "bench", field: "weights", value: weights }]);
}
