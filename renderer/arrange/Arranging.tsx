import { useEffect } from "react";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { ATTEMPTS } from "./arrange.ts";

/** Over the drawing while parts are arranged: how far it is, and a way out. Escape gives it up too. */
export function Arranging() {
  const { dispatch } = useAppStore();
  const attempt = useApp(({ arranging }) => arranging);
  const isGoing = attempt !== null;
  useEffect(() => {
    if (!isGoing) return;
    const leave = (event: KeyboardEvent): void => {
      if (event.key !== "Escape") return;
      event.stopPropagation();
      dispatch({ do: "cancel-arrange" });
    };
    document.addEventListener("keydown", leave, true);
    return () => document.removeEventListener("keydown", leave, true);
  }, [isGoing, dispatch]);
  if (attempt === null) return null;
  return (
    <div className="arranging card" role="status">
      <p>
        <b>Arranging.</b>{" "}
        <span className="figures">
          Attempt {attempt} of {ATTEMPTS}
        </span>
      </p>
      <progress max={ATTEMPTS} value={attempt - 1} aria-label="Attempts done" />
      <button type="button" className="button is-quiet is-low" onClick={() => dispatch({ do: "cancel-arrange" })}>
        Cancel
      </button>
    </div>
  );
}
