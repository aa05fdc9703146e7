import { type Outcome, refuse } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import { LEFT_BY_HAND } from "../../live/standing.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { editOf, withGoodFuses } from "../editOf.ts";
import { liveNow } from "../liveNow.ts";

/**
 * Mends every fault and puts good fuses in: the circuit stands as it would with nothing wrong. Refuses `no-faults` where
 * nothing is there to mend.
 */
export function healAll(bench: Bench): Outcome<Edit> {
  const { after } = liveNow(bench);
  const good = withGoodFuses(after.good);
  const hasMelted = Object.values(after.now).some((state) => LEFT_BY_HAND.includes(state));
  if (bench.faults.length === 0 && !hasMelted) return refuse("no-faults");
  return editOf(bench, EDIT_NAMES.healAll, [
    { change: "bench", field: "before", value: { condition: bench.condition, good, now: good } },
    { change: "bench", field: "faults", value: [] },
  ]);
}
