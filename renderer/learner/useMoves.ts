import { useCallback } from "react";
import type { Move } from "../../core/lesson/move.ts";
import { useAppStore } from "../state/AppContext.tsx";

/** Makes moves on the vehicle, one after the other. */
export function useMoves(): (...moves: readonly Move[]) => void {
  const { dispatch } = useAppStore();
  return useCallback((...moves) => dispatch({ do: "make-moves", moves }), [dispatch]);
}
