import { type Outcome, refuse } from "../../base/outcome.ts";
import { INSTRUMENT_EDITS } from "../../base/words/instruments.ts";
import { freshInstrument, INSTRUMENTS, type InstrumentName } from "../../live/instruments/clipped.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { editOf } from "../editOf.ts";

/** Most instruments that lie on a bench at once. */
export const MOST_INSTRUMENTS = 12;

/** Lays an instrument on the bench, not clipped to anything that it would read yet. Refuses `instruments-many`. */
export function layInstrument(bench: Bench, instrument: InstrumentName): Outcome<Edit> {
  const { clipped } = bench;
  if (!INSTRUMENTS.includes(instrument)) return refuse("instrument-shape");
  if (clipped.length >= MOST_INSTRUMENTS) return refuse("instruments-many", { most: MOST_INSTRUMENTS });
  const id = String(1 + Math.max(0, ...clipped.map((each) => Number(each.id))));
  const value = [...clipped, freshInstrument(id, instrument)];
  return editOf(bench, INSTRUMENT_EDITS.layInstrument(instrument), [{ change: "bench", field: "clipped", value }]);
}
