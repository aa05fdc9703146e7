import { useEffect } from "react";
import { STEP_SECONDS } from "../../core/live/comings.ts";
import { useApp, useAppStore } from "./AppContext.tsx";
import type { AppState } from "./state.ts";

/** Whether a fault that comes and goes is shown: only then there is time to pass. */
export function hasComings({ open }: AppState): boolean {
  if (!open?.desk.bench.showFaults) return false;
  return open.desk.bench.faults.some(({ pattern }) => pattern !== undefined);
}

/** Whether nothing may move by itself: the person or the system says so. */
export function isStill({ settings }: AppState): boolean {
  return settings.motion === "still" || matchMedia("(prefers-reduced-motion: reduce)").matches;
}

/** Lets time pass for faults that come and go, step by step, while they are shown and nobody has stopped it. */
export function useTime(): void {
  const { dispatch } = useAppStore();
  const isPassing = useApp((state) => hasComings(state) && !isStill(state) && state.open?.time.isPassing === true);
  useEffect(() => {
    if (!isPassing) return;
    const timer = setInterval(() => dispatch({ do: "pass-time" }), STEP_SECONDS * 1_000);
    return () => clearInterval(timer);
  }, [isPassing, dispatch]);
}
