import { type Outcome, refuse } from "../../base/outcome.ts";
import { WEIGHING_NAMES } from "../../base/words/weighing.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { editOf } from "../editOf.ts";

/** Takes a weight back: what it was set for weighs as guessed again. Refuses `weight-none`. */
export function dropWeight(bench: Bench, of: string): Outcome<Edit> {
  const weights = bench.weights.filter((each) => each.of !== of);
  if (weights.length === bench.weights.length) return refuse("weight-none", { of });
  return editOf(bench, WEIGHING_NAMES.dropWeight(of), [{ change: "bench", field: "weights", value: weights }]);
}
