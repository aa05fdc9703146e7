import { useApp } from "../state/AppContext.tsx";
import { hasFaults, suspectNow } from "../state/views.ts";
import { GoodOrFault } from "./GoodOrFault.tsx";

/** Over the top right of the drawing, only while a fault or a suspect is shown: with it, or with nothing wrong. */
export function SheetSwitch() {
  const isFaulty = useApp(hasFaults);
  const suspect = useApp(suspectNow);
  if (!isFaulty && !suspect) return null;
  return (
    <div className="sheet-switch">
      <span className="sheet-switch-words small" aria-hidden="true">
        Wires as they would be with
      </span>
      <GoodOrFault />
    </div>
  );
}
