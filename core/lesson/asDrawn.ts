import type { Circuit, Condition } from "../circuit/circuit.ts";
import { type Live, liveOf, type PartLive } from "../live/live.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { Doing } from "../parts/kind.ts";
import { withoutStates } from "./cover.ts";
import type { LoadSeen } from "./vehicle.ts";

/** Kinds that a hand moves: how they stand is seen, whatever the wires carry. Relays and flashers stand as drawn. */
const BY_THEMSELVES: readonly string[] = ["relay", "flasher"];

/**
 * The drawing as whoever stands before the vehicle knows it: controls as they are set, loads as they are seen to work, wires in
 * ink. Nothing of it is solved with a fault in it, and no wire has a state.
 */
export function asDrawn(circuit: Circuit, condition: Condition, loads: readonly LoadSeen[]): Live {
  const good = liveOf(circuit, condition);
  const seen = new Map(loads.map(({ part, does }) => [part, does]));
  const parts = circuit.parts.flatMap(({ id, kind }): readonly (readonly [string, PartLive])[] => {
    const stands = good.parts.get(id);
    const role = kindOf(kind)?.role;
    if (!stands) return [];
    if (role === "control" && !BY_THEMSELVES.includes(kind)) return [[id, { ...stands, ...AT_REST }]];
    const does = seen.get(id);
    if (role !== "load" || does === undefined || does === "still") return [];
    const weak = kindOf(kind)?.shines ? "dim" : stands.doing;
    return [[id, { ...stands, ...AT_REST, doing: does === "weak" ? weak : (does as Doing["doing"]) }]];
  });
  return withoutStates(condition, new Map(parts));
}

const AT_REST = { amps: 0, watts: 0, level: null, doing: null } as const;
