import { useKeyOf } from "../keys/useKeyOf.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { hasComings, isStill } from "../state/useTime.ts";

/** While a fault that comes and goes is shown: stops it, or lets it go on; where nothing may move by itself, one change at a press. */
export function Comings() {
  const { dispatch } = useAppStore();
  const keyOf = useKeyOf();
  const isShown = useApp(hasComings);
  const isStepped = useApp(isStill);
  const isPassing = useApp(({ open }) => open?.time.isPassing ?? false);
  if (!isShown) return null;
  const isRunning = isPassing && !isStepped;
  return (
    <>
      {!isRunning && (
        <button type="button" className="button is-low" onClick={() => dispatch({ do: "pass-to-next" })}>
          Next change
        </button>
      )}
      {!isStepped && (
        <button
          type="button"
          className="button is-low"
          title={`What comes and goes (${keyOf("time")})`}
          onClick={() => dispatch({ do: "let-time-pass", isPassing: !isPassing })}
        >
          {isPassing ? "Stop time" : "Go on"}
        </button>
      )}
    </>
  );
}
