import { healFault } from "../../core/edit/commands/healFault.ts";
import { faultText, faultTitle } from "../../core/live/fault.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { circuitNow, faultsNow } from "../state/views.ts";
import { comingWord } from "../words/fault.ts";
import { unbroken } from "../words/figures.ts";
import { FaultEntry } from "./FaultEntry.tsx";
import { Icon } from "./Icon.tsx";

const NONE: readonly string[] = [];

/** Faults put into the circuit, a way to take each out, and a form to put another in. */
export function Faults() {
  const { dispatch } = useAppStore();
  const make = useMake();
  const circuit = useApp(circuitNow);
  const faults = useApp(faultsNow);
  const gone = useApp(({ open }) => open?.desk.bench.gone ?? NONE);
  if (!circuit) return null;
  return (
    <div className="view-scroll">
      <header className="view-head">
        <h2>{faults.length === 0 ? "Nothing wrong" : "Put into this circuit"}</h2>
        <p className="small">
          {faults.length === 0
            ? "Put a fault in and see what every wire does with it. The drawing of the good circuit is kept."
            : "What differs from the good circuit is marked on the drawing."}
        </p>
      </header>
      {faults.length > 0 && (
        <ul className="planted">
          {faults.map((fault) => (
            <li key={faultText(fault)}>
              <button
                type="button"
                className="planted-name"
                title="Find on the drawing"
                onClick={() => dispatch({ do: "find-named", id: fault.target })}
              >
                {unbroken(faultTitle(circuit, fault))}
                {fault.pattern !== undefined && <b>: {comingWord(fault, gone)}</b>}
              </button>
              <button
                type="button"
                className="icon-button is-small"
                aria-label={`Take out: ${unbroken(faultTitle(circuit, fault))}`}
                title="Take this fault out"
                onClick={() => make((bench) => healFault(bench, faultText(fault)))}
              >
                <Icon name="close" size={16} />
              </button>
            </li>
          ))}
        </ul>
      )}
      <FaultEntry circuit={circuit} />
    </div>
  );
}
