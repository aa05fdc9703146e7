import type { Host } from "../host/host.ts";
import { changedByOther } from "../words/saving.ts";
import type { AppStore } from "./store.ts";

/** How often it is asked whether somebody else changed what is open, in milliseconds. */
export const LOOK_EVERY_MS = 4_000;

/**
 * Asks how the open circuit stands in the library, and tells once where somebody else changed or deleted it. Nothing is asked
 * while an edit of this page waits to be kept: its save finds out by itself.
 */
export function watchOthers(host: Host): (store: AppStore) => Promise<void> {
  let told = "";
  return async ({ getState, dispatch }) => {
    const { open } = getState();
    if (open === null || open.id === null || open.saved !== "saved") return;
    const now = await host.ask("circuits.standing", { id: open.id }).catch(() => null);
    const { open: still } = getState();
    if (!now?.ok || still?.number !== open.number || still.saved !== "saved") return;
    const { version, isRemoved } = now.value;
    const what = `${still.number} ${still.id} ${isRemoved ? "removed" : "changed"}`;
    if (still.id !== open.id || what === told || (version <= still.version && !isRemoved)) return;
    told = what;
    dispatch({ do: "tell", notice: changedByOther(still, now.value) });
  };
}
