import { type Outcome, refuse } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { atRest, editOf, hasReleasable, isRest } from "../editOf.ts";
import { liveNow } from "../liveNow.ts";

/**
 * Puts all at rest: controls, plugs, fuses, battery, engine and ambient, with relays released. What melted stays so until
 * it is replaced, and faults stay in. Refuses `at-rest`.
 */
export function restAll(bench: Bench): Outcome<Edit> {
  if (isAtRest(bench)) return refuse("at-rest");
  return editOf(bench, EDIT_NAMES.restAll, [
    { change: "bench", field: "before", value: atRest(bench) },
    { change: "bench", field: "condition", value: {} },
  ]);
}

/** Nothing is set and nothing could be released: it was put at rest just now, or no relay has pulled in. */
function isAtRest(bench: Bench): boolean {
  if (Object.keys(bench.condition).length > 0) return false;
  const { good, now } = liveNow(bench).after;
  return isRest(bench.before) || (!hasReleasable(good) && !hasReleasable(now));
}
