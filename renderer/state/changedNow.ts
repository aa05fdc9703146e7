import type { Bench } from "../../core/edit/bench.ts";
import { liveNow } from "../../core/edit/liveNow.ts";
import { wiringOf } from "../../core/edit/wiring.ts";
import { changedBetween } from "../../core/lesson/changed.ts";
import type { Live } from "../../core/live/live.ts";
import type { Open } from "./state.ts";

/** The bench before the last step that current may feel; null where what is drawn now is another circuit. */
export function stoodBefore({ stoodBefore: known }: Open, before: Bench, after: Bench): Bench | null {
  if (before === after) return known;
  if (wiringOf(before.circuit) !== wiringOf(after.circuit)) return null;
  return feels(before, after) ? before : known;
}

function feels(before: Bench, after: Bench): boolean {
  return (["condition", "before", "faults", "gone", "showFaults", "clipped"] as const).some(
    (field) => before[field] !== after[field],
  );
}

/** Ids of what is otherwise now than it was on a bench; null where nothing is. */
export function changedSince(was: Bench, live: Live): ReadonlySet<string> | null {
  const changed = changedBetween(liveNow(was).shown, live, was.circuit.nominalVolts);
  return changed.size > 0 ? changed : null;
}
