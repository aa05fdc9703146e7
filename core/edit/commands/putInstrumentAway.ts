import type { Outcome } from "../../base/outcome.ts";
import { INSTRUMENT_EDITS } from "../../base/words/instruments.ts";
import type { Bench } from "../bench.ts";
import { instrumentOn } from "../clipping.ts";
import type { Edit } from "../edit.ts";
import { editOf, withGoodFuse } from "../editOf.ts";

/** Takes an instrument off the circuit and off the bench. Refuses `instrument-absent`. */
export function putInstrumentAway(bench: Bench, id: string): Outcome<Edit> {
  const on = instrumentOn(bench, id);
  if (!on.ok) return on;
  const { instrument } = on.value;
  return editOf(bench, INSTRUMENT_EDITS.putInstrumentAway(instrument), [
    { change: "bench", field: "before", value: withGoodFuse(bench, id) },
    { change: "bench", field: "clipped", value: bench.clipped.filter((one) => one.id !== id) },
  ]);
}
