import { useCallback } from "react";
import { keysOf } from "../../core/edit/keys/ownKeys.ts";
import { printed } from "../../core/edit/keys/press.ts";
import type { KeyId } from "../../core/edit/keys/rows.ts";
import { useApp } from "../state/AppContext.tsx";

/** Gives the first key of a row as it is printed here, to stand in a button's name. */
export function useKeyOf(): (id: KeyId) => string {
  const own = useApp(({ settings }) => settings.keys);
  return useCallback(
    (id) => {
      const [key] = keysOf(id, own);
      return key === undefined ? "no key" : printed(key, hasCommandKey());
    },
    [own],
  );
}

/** Whether this machine's keyboard has a command key in the place of Ctrl. */
export function hasCommandKey(): boolean {
  return typeof navigator !== "undefined" && /mac/i.test(navigator.platform);
}
