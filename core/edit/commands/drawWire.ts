import type { PointId } from "../../base/ids.ts";
import type { Outcome } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { editOf, goingOn } from "../editOf.ts";
import { type WireGiven, wireDrawn } from "../wireDrawn.ts";

/**
 * Draws a wire between two points under the next free id, on the cavities where these carry the terminals. Refuses what
 * names no point, `cavity-empty`, `terminal-bare`, `wire-to-itself`, `wire-there`, and a wrong look or bend.
 */
export function drawWire(bench: Bench, from: PointId, to: PointId, given: WireGiven = {}): Outcome<Edit> {
  const drawn = wireDrawn(bench.circuit, { ...given, from, to });
  if (!drawn.ok) return drawn;
  const { wire, changes } = drawn.value;
  return editOf(bench, WIRING_NAMES.drawWire(wire.id, wire.from, wire.to), [goingOn(bench), ...changes]);
}
