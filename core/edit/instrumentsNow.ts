import { remember } from "../base/memo.ts";
import { withoutGone } from "../live/comings.ts";
import { type Showing, showings } from "../live/instruments/showing.ts";
import type { Bench } from "./bench.ts";
import { liveNow } from "./liveNow.ts";
import { wiringOf } from "./wiring.ts";

/** What every instrument on the bench shows in the circuit as it is drawn now, by the instrument's id. */
export const instrumentsNow = remember((bench: Bench): ReadonlyMap<string, Showing> => {
  const { shown, after } = liveNow(bench);
  const { condition, clipped, showFaults, faults, gone } = bench;
  return showings(clipped, {
    circuit: wiringOf(bench.circuit),
    live: shown,
    now: { condition, states: showFaults ? after.now : after.good },
    faults: showFaults ? withoutGone(faults, gone) : [],
  });
});
