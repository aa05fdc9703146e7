import { useCallback, useMemo } from "react";
import { underlayAt } from "../../core/circuit/underlays.ts";
import { useAppStore } from "../state/AppContext.tsx";
import { circuitNow } from "../state/views.ts";
import { takenBy } from "./adjusting.ts";
import { paperChosen } from "./paperChosen.ts";

/** How an adjustment ends: taken as an edit, or left as it was. Who adjusted by keys goes on with the drawing. */
export function useTake(): { readonly take: () => void; readonly leave: () => void } {
  const { dispatch, getState } = useAppStore();
  const end = useCallback(() => {
    dispatch({ do: "adjust", adjusting: null });
    document.querySelector<HTMLElement>(".sheet-canvas")?.focus({ preventScroll: true });
  }, [dispatch]);
  return useMemo(
    () => ({
      take: () => {
        const adjusting = getState().open?.adjusting;
        const circuit = circuitNow(getState());
        const lying = adjusting && circuit ? underlayAt(circuit, adjusting.underlay) : null;
        if (adjusting && lying) {
          const { underlay, page } = lying;
          dispatch({ do: "make", command: takenBy(adjusting, underlay, page, paperChosen(adjusting)) });
        }
        end();
      },
      leave: end,
    }),
    [dispatch, getState, end],
  );
}
