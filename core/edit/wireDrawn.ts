import type { PointId } from "../base/ids.ts";
import { type Outcome, ok } from "../base/outcome.ts";
import type { Circuit, Wire } from "../circuit/circuit.ts";
import type { Change } from "./change.ts";
import { nextId, takenIds } from "./ids.ts";
import { type Bends, bendsOf } from "./setBends.ts";
import { wireEndOf, wireRefusal } from "./wireEnds.ts";
import { lookOf, type WireLook } from "./wireLook.ts";

/** What may be said of a wire that is drawn, beside its ends. */
export interface WireGiven extends WireLook {
  readonly bends?: Bends;
}

/** A wire that is drawn between two points. */
export interface NewWire extends WireGiven {
  readonly from: PointId;
  readonly to: PointId;
}

/** A new wire under the next free id, and the changes that draw it. Refuses what `drawWire` refuses. */
export function wireDrawn(
  circuit: Circuit,
  given: NewWire,
): Outcome<{ readonly wire: Wire; readonly changes: readonly Change[] }> {
  const from = wireEndOf(circuit, given.from);
  if (!from.ok) return from;
  const to = wireEndOf(circuit, given.to);
  if (!to.ok) return to;
  const ends = { id: nextId("W", takenIds(circuit)), from: from.value, to: to.value };
  const refusal = wireRefusal(circuit, ends);
  if (refusal) return { ok: false, refusal };
  const look = lookOf(circuit, given);
  if (!look.ok) return look;
  const bends = bendsOf(circuit, [ends.from, ends.to], given.bends ?? []);
  if (!bends.ok) return bends;
  const wire: Wire = { ...ends, ...look.value };
  const changes: readonly Change[] = [
    { change: "add", list: "wires", at: circuit.wires.length, item: wire },
    ...(bends.value.length > 0
      ? [{ change: "entry", record: "bends", key: wire.id, value: bends.value } as const]
      : []),
  ];
  return ok({ wire, changes });
}
