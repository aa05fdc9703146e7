import { useAppStore } from "../state/AppContext.tsx";
import { Mark } from "./Mark.tsx";

/** The mark and name of the program in the bar of a bench: the way back to the library. */
export function Brand() {
  const { dispatch } = useAppStore();
  return (
    <button
      type="button"
      className="brand"
      aria-label="Wirefathom, back to the library"
      title="Back to the library"
      onClick={() => dispatch({ do: "close" })}
    >
      <Mark />
      <span className="brand-name">Wirefathom</span>
    </button>
  );
}
