import { useCallback } from "react";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import type { Handins, HandinsAct } from "./handins.ts";

/** The instructor's desk, and a way to ask something of it. */
export function useHandins(): { readonly desk: Handins; readonly ask: (act: HandinsAct) => void } {
  const { dispatch } = useAppStore();
  const desk = useApp(({ handins }) => handins);
  const ask = useCallback((act: HandinsAct) => dispatch({ do: "handins", act }), [dispatch]);
  return { desk, ask };
}
