import { useCallback } from "react";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import type { Cupboard, CupboardAct } from "./cupboard.ts";

/** The cupboard of the open bench, and a way to ask something of it. */
export function useCupboard(): {
  readonly cupboard: Cupboard | null;
  readonly ask: (act: CupboardAct) => void;
} {
  const { dispatch } = useAppStore();
  const cupboard = useApp(({ open }) => open?.cupboard ?? null);
  const ask = useCallback((act: CupboardAct) => dispatch({ do: "cupboard", act }), [dispatch]);
  return { cupboard, ask };
}
