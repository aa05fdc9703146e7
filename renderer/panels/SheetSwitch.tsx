import { useKeyOf } from "../keys/useKeyOf.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { hasFaults, suspectNow } from "../state/views.ts";
import { Comings } from "./Comings.tsx";
import { GoodOrFault } from "./GoodOrFault.tsx";

/**
 * Over the top right of the drawing: with a fault or suspect that is shown, or with nothing wrong; and that only what changed is
 * shown in full, while it is.
 */
export function SheetSwitch() {
  const isFaulty = useApp(hasFaults);
  const suspect = useApp(suspectNow);
  const isOnlyChanged = useApp(({ open }) => open?.showsChanged ?? false);
  if (!isFaulty && !suspect && !isOnlyChanged) return null;
  return (
    <div className="sheet-switch">
      {isOnlyChanged && <OnlyChanged />}
      <Comings />
      {(isFaulty || suspect) && <WithFault />}
    </div>
  );
}

function WithFault() {
  return (
    <>
      <span className="sheet-switch-words small" aria-hidden="true">
        Wires as they would be with
      </span>
      <GoodOrFault />
    </>
  );
}

/** Says why most of the drawing is dimmed; a press shows everything again. */
function OnlyChanged() {
  const { dispatch } = useAppStore();
  const keyOf = useKeyOf();
  return (
    <>
      <span className="sheet-switch-words small">In full: what changed</span>
      <button
        type="button"
        className="button is-low"
        title={`Show everything in full (${keyOf("changed")})`}
        onClick={() => dispatch({ do: "show-changed", isOn: false })}
      >
        Show everything
      </button>
    </>
  );
}
