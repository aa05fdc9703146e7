import { useApp } from "../state/AppContext.tsx";
import { hasFaults } from "../state/views.ts";
import { GoodOrFault } from "./GoodOrFault.tsx";

/** Over the top right of the drawing, only while a fault is put in: with it, or with nothing wrong. */
export function SheetSwitch() {
  const faulty = useApp(hasFaults);
  if (!faulty) return null;
  return (
    <div className="sheet-switch">
      <GoodOrFault />
    </div>
  );
}
