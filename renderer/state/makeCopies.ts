import type { Command } from "./action.ts";
import type { AppStore } from "./store.ts";
import { circuitNow } from "./views.ts";

/** Makes an edit and chooses the parts that come of it: what is done next, as a move by arrows, is done to the copies. */
export function makeCopies({ dispatch, getState }: AppStore, command: Command): void {
  const before = new Set(circuitNow(getState())?.parts.map(({ id }) => id));
  dispatch({ do: "make", command });
  const copies = circuitNow(getState())?.parts.filter(({ id }) => !before.has(id)) ?? [];
  if (copies.length > 0) dispatch({ do: "choose-all", things: copies.map(({ id }) => ({ is: "part", id }) as const) });
}
