import type { WireId } from "../../base/ids.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import { INSTRUMENT_EDITS } from "../../base/words/instruments.ts";
import type { Bench } from "../bench.ts";
import { clippedAs, instrumentOn } from "../clipping.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";

/** Puts a clamp round a wire; null takes it off. Refuses `instrument-absent`, `instrument-clamp`, `wire-unknown` and `already-so`. */
export function clampRound(bench: Bench, id: string, wire: WireId | null): Outcome<Edit> {
  const on = instrumentOn(bench, id);
  if (!on.ok) return on;
  const each = on.value;
  if (each.instrument !== "clamp") return refuse("instrument-clamp");
  if (each.around === wire) return alreadySo(wire ?? "The clamp");
  return editOf(bench, INSTRUMENT_EDITS.clampRound(wire), [clippedAs(bench, { ...each, around: wire })]);
}
