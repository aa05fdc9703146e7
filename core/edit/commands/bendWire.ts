import type { WireId } from "../../base/ids.ts";
import type { Outcome } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Bench } from "../bench.ts";
import type { Change } from "../change.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";
import { type Bends, bendsOf } from "../setBends.ts";
import { wireOf } from "../wireEnds.ts";

/**
 * Sets the bends of a wire, on whole grid units; without any the program lays it. Refuses `wire-unknown`, `bends-many`,
 * `bend-off-page` and `already-so`.
 */
export function bendWire(bench: Bench, id: WireId, typed: Bends): Outcome<Edit> {
  const { circuit } = bench;
  const wire = wireOf(circuit, id);
  if (!wire.ok) return wire;
  const bends = bendsOf(circuit, [wire.value.from, wire.value.to], typed);
  if (!bends.ok) return bends;
  const { value } = bends;
  if (JSON.stringify(circuit.placement.wires[id] ?? []) === JSON.stringify(value)) return alreadySo(id);
  const change: Change = { change: "entry", record: "bends", key: id, ...(value.length > 0 && { value }) };
  return editOf(bench, value.length > 0 ? WIRING_NAMES.bendWire(id) : WIRING_NAMES.layWire(id), [change]);
}
