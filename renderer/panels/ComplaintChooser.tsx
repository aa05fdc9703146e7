import { useState } from "react";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { drainCheck } from "../../core/diagnose/drain.ts";
import { chooseComplaint } from "../../core/edit/commands/chooseComplaint.ts";
import { AddCheck } from "../circuit/AddCheck.tsx";
import { useMake } from "../state/useMake.ts";
import { Icon } from "./Icon.tsx";

const MANY_CHECKS = 8;

/** Asks which function check fails. With many of them, a field narrows the list. */
export function ComplaintChooser({ circuit }: { readonly circuit: Circuit }) {
  const make = useMake();
  const [typed, setTyped] = useState("");
  const words = typed.trim().toLowerCase().split(/\s+/);
  const drain = drainCheck(circuit);
  const shown = [...(drain ? [drain] : []), ...circuit.checks].filter(({ label }) =>
    words.every((word) => label.toLowerCase().includes(word)),
  );
  return (
    <>
      <header className="view-head">
        <h2>What does not work?</h2>
        <p className="small">Choose the check that fails. The order of probing starts from it.</p>
      </header>
      {circuit.checks.length > MANY_CHECKS && (
        <div className="view-field">
          <label className="field">
            <Icon name="find" size={16} />
            <input
              type="search"
              value={typed}
              placeholder="a word of it, such as lamp"
              aria-label="Narrow the checks"
              onChange={(event) => setTyped(event.target.value)}
            />
          </label>
        </div>
      )}
      <ul className="view-scroll choices">
        {shown.map((check) => (
          <li key={check.id}>
            <button
              type="button"
              className="menu-item"
              onClick={() => make((bench) => chooseComplaint(bench, check.id))}
            >
              {check.label}
              <span className="menu-end">
                <Icon name="onward" size={16} />
              </span>
            </button>
          </li>
        ))}
        {shown.length === 0 && circuit.checks.length > 0 && <li className="find-none">No check is called that.</li>}
        <li className="choices-add">
          <AddCheck circuit={circuit} />
        </li>
      </ul>
    </>
  );
}
