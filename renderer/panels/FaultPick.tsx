import { useState } from "react";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { healFault } from "../../core/edit/commands/healFault.ts";
import { plantFault } from "../../core/edit/commands/plantFault.ts";
import { faultText, faultTitle } from "../../core/live/fault.ts";
import { useApp } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { faultsNow } from "../state/views.ts";
import { modesOf } from "../words/fault.ts";
import { unbroken } from "../words/figures.ts";

/** Puts a fault into one thing, or takes it out. Ways that need more than a usual amount are in the Faults view. */
export function FaultPick({ circuit, target }: { readonly circuit: Circuit; readonly target: string }) {
  const make = useMake();
  const planted = useApp(faultsNow).filter((fault) => fault.target === target);
  const modes = modesOf(circuit, target).filter(({ mode }) => mode !== "crossed");
  const [mode, setMode] = useState(modes[0]?.mode ?? "");
  if (modes.length === 0) return null;
  return (
    <div className="fault-pick">
      {planted.map((fault) => (
        <p key={faultText(fault)} className="small">
          <b>{unbroken(faultTitle(circuit, fault))}</b>
          <button
            type="button"
            className="button is-quiet is-low"
            onClick={() => make((bench) => healFault(bench, faultText(fault)))}
          >
            Take out
          </button>
        </p>
      ))}
      <div className="fault-pick-row">
        <label className="inline-select">
          <span className="unseen">How {target} fails</span>
          <select value={mode} onChange={(event) => setMode(event.target.value)}>
            {modes.map((each) => (
              <option key={each.mode} value={each.mode}>
                {each.title}
              </option>
            ))}
          </select>
        </label>
        <button
          type="button"
          className="button is-low"
          onClick={() => make((bench) => plantFault(bench, `${target}:${mode}`))}
        >
          Put this fault in
        </button>
      </div>
    </div>
  );
}
