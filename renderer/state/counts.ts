import { WIRE_STATES, type WireState } from "../../core/base/states.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Live } from "../../core/live/live.ts";
import { wiresByPage } from "./places.ts";

/** How many wires are in a state; those always fed are counted by themselves. */
export interface StateCount {
  readonly key: WireState | "always-fed";
  readonly state: WireState;
  readonly count: number;
}

const ORDER: readonly StateCount["key"][] = WIRE_STATES.flatMap((state): StateCount["key"][] =>
  state === "powered" ? [state, "always-fed"] : [state],
);

/** Wires of a page by state, only states that are there. A wire that differs between its ends counts in both. */
export function countsOn(circuit: Circuit, page: string, live: Live): readonly StateCount[] {
  const counts = new Map<StateCount["key"], StateCount>();
  const add = (key: StateCount["key"], state: WireState): void => {
    counts.set(key, { key, state, count: (counts.get(key)?.count ?? 0) + 1 });
  };
  for (const id of wiresByPage(circuit).get(page) ?? []) {
    const now = live.wires.get(id);
    if (!now) continue;
    if (now.alwaysFed && now.state[0] === now.state[1]) add("always-fed", now.state[0]);
    else for (const state of new Set(now.state)) add(state, state);
  }
  return ORDER.flatMap((key) => counts.get(key) ?? []);
}
