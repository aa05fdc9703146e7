import { parseAmount } from "../../base/amount.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import { INSTRUMENT_EDITS } from "../../base/words/instruments.ts";
import type { Bench } from "../bench.ts";
import { clippedAs, instrumentOn } from "../clipping.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf, withGoodFuse } from "../editOf.ts";

/**
 * Gives a jumper another fuse, which is a good one, or a stand-in load other amps, as typed. Refuses `instrument-absent`, `instrument-amps`,
 * `amount-limits`, `already-so`, and as `parseAmount` does.
 */
export function changeInstrumentAmps(bench: Bench, id: string, typed: string): Outcome<Edit> {
  const on = instrumentOn(bench, id);
  if (!on.ok) return on;
  const each = on.value;
  const amps = parseAmount(typed, "A");
  if (!amps.ok) return amps;
  if (each.instrument === "clamp") return refuse("instrument-amps");
  if (each.amps === amps.value) return alreadySo(`${amps.value} A`);
  return editOf(bench, INSTRUMENT_EDITS.changeInstrumentAmps(each.instrument, amps.value), [
    { change: "bench", field: "before", value: withGoodFuse(bench, id) },
    clippedAs(bench, { ...each, amps: amps.value }),
  ]);
}
