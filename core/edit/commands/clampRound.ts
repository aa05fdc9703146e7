import type { WireId } from "../../base/ids.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import { INSTRUMENT_EDITS } from "../../base/words/instruments.ts";
import type { Bench } from "../bench.ts";
import { clippedRefusal } from "../clipping.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";

/** Puts a clamp round a wire; null takes it off. Refuses `instrument-absent`, `instrument-clamp`, `wire-unknown` and `already-so`. */
export function clampRound(bench: Bench, id: string, wire: WireId | null): Outcome<Edit> {
  const each = bench.clipped.find((one) => one.id === id);
  if (!each) return refuse("instrument-absent", { id });
  if (each.instrument !== "clamp") return refuse("instrument-clamp");
  if (each.around === wire) return alreadySo(wire ?? "The clamp");
  const moved = { ...each, around: wire };
  const refusal = clippedRefusal(bench.circuit, moved);
  if (refusal) return { ok: false, refusal };
  const value = bench.clipped.map((one) => (one === each ? moved : one));
  return editOf(bench, INSTRUMENT_EDITS.clampRound(wire), [{ change: "bench", field: "clipped", value }]);
}
