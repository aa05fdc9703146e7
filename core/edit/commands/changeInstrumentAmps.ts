import { parseAmount } from "../../base/amount.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import { INSTRUMENT_EDITS } from "../../base/words/instruments.ts";
import type { Bench } from "../bench.ts";
import { ampsRefusal } from "../clipping.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf, withGoodFuse } from "../editOf.ts";

/**
 * Gives a jumper another fuse, which is a good one, or a stand-in load other amps, as typed. Refuses `instrument-absent`, `instrument-amps`,
 * `amount-limits`, `already-so`, and as `parseAmount` does.
 */
export function changeInstrumentAmps(bench: Bench, id: string, typed: string): Outcome<Edit> {
  const each = bench.clipped.find((one) => one.id === id);
  if (!each) return refuse("instrument-absent", { id });
  const amps = parseAmount(typed, "A");
  if (!amps.ok) return amps;
  const refusal = ampsRefusal(each.instrument, amps.value);
  if (refusal || each.instrument === "clamp") return refusal ? { ok: false, refusal } : refuse("instrument-amps");
  if (each.amps === amps.value) return alreadySo(`${amps.value} A`);
  const value = bench.clipped.map((one) => (one === each ? { ...each, amps: amps.value } : one));
  return editOf(bench, INSTRUMENT_EDITS.changeInstrumentAmps(each.instrument, amps.value), [
    { change: "bench", field: "before", value: withGoodFuse(bench, id) },
    { change: "bench", field: "clipped", value },
  ]);
}
