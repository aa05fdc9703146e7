import { useCallback } from "react";
import { useAppStore } from "./AppContext.tsx";
import type { Command } from "./action.ts";

/** A way to make an edit by a command of core with all it needs but the bench. */
export function useMake(): (command: Command) => void {
  const { dispatch } = useAppStore();
  return useCallback((command) => dispatch({ do: "make", command }), [dispatch]);
}
