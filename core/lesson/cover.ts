import { remember } from "../base/memo.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { controlsOf } from "../circuit/points.ts";
import type { Live, PartLive } from "../live/live.ts";

/** The parts that hands throw: how they stand is seen by anybody. */
const handledOf = remember(
  (circuit: Circuit): ReadonlySet<string> => new Set(controlsOf(circuit).map(({ part }) => part.id)),
);

/**
 * A live state with its states covered up: how hands have set the circuit is left, and nothing of what comes of it. No
 * point and no wire has a state or volts, no part works, and relays and fuses lie as at rest.
 */
export function coveredUp(circuit: Circuit, live: Live): Live {
  const handled = handledOf(circuit);
  const parts = [...live.parts].flatMap(([id, { closed }]): (readonly [string, PartLive])[] =>
    handled.has(id) ? [[id, { doing: null, amps: 0, watts: 0, level: null, state: "", closed }]] : [],
  );
  return withoutStates(live.condition, new Map(parts));
}

/** A live state in which no point and no wire has a state or volts, and parts stand and work as they are given. */
export function withoutStates(condition: Condition, parts: Live["parts"]): Live {
  return {
    condition,
    settled: true,
    points: new Map(),
    wires: new Map(),
    parts,
    clipped: [],
    happenings: [],
    before: null,
  };
}
