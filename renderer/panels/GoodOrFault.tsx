import { showFaults } from "../../core/edit/commands/showFaults.ts";
import { useApp } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { hasFaults, showsFaults } from "../state/views.ts";

/** The one switch between the circuit with nothing wrong and the circuit with its faults; absent while there are none. */
export function GoodOrFault() {
  const make = useMake();
  const faulty = useApp(hasFaults);
  const shown = useApp(showsFaults);
  if (!faulty) return null;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as this row is
    <div className="segments good-or-fault" role="group" aria-label="Wires as they would be">
      <button
        type="button"
        className={shown ? "segment" : "segment is-now"}
        aria-pressed={!shown}
        onClick={() => make((bench) => showFaults(bench, false))}
      >
        Nothing wrong
      </button>
      <button
        type="button"
        className={shown ? "segment is-thrown" : "segment"}
        aria-pressed={shown}
        onClick={() => make((bench) => showFaults(bench, true))}
      >
        With the fault
      </button>
    </div>
  );
}
