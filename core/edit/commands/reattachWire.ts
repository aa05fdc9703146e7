import type { PointId, WireId } from "../../base/ids.ts";
import type { Outcome } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Bench } from "../bench.ts";
import type { Change } from "../change.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf, goingOn } from "../editOf.ts";
import { placeForgotten } from "../seenPlaces.ts";
import { wireEndOf, wireOf, wireRefusal } from "../wireEnds.ts";

/**
 * Puts one end of a wire on another point; bends set on it are dropped, so that it is laid anew. Refuses `wire-unknown`,
 * what names no point or takes no wire, `wire-to-itself`, `wire-there` and `already-so`.
 */
export function reattachWire(bench: Bench, id: WireId, end: "from" | "to", point: PointId): Outcome<Edit> {
  const { circuit } = bench;
  const wire = wireOf(circuit, id);
  if (!wire.ok) return wire;
  const at = wireEndOf(circuit, point);
  if (!at.ok) return at;
  if (wire.value[end] === at.value) return alreadySo(`${id} ${at.value}`);
  const refusal = wireRefusal(circuit, { ...wire.value, [end]: at.value });
  if (refusal) return { ok: false, refusal };
  const isBent = Object.hasOwn(circuit.placement.wires, id);
  const changes: readonly Change[] = [
    goingOn(bench),
    { change: "item", list: "wires", id, field: end, value: at.value },
    ...placeForgotten(wire.value, end),
    ...(isBent ? [{ change: "entry", record: "bends", key: id } as const] : []),
  ];
  return editOf(bench, WIRING_NAMES.reattachWire(id, at.value), changes);
}
