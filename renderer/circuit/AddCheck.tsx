import { useId, useState } from "react";
import type { Circuit, Expectation } from "../../core/circuit/circuit.ts";
import { addCheck } from "../../core/edit/commands/addCheck.ts";
import { Trouble } from "../editor/Trouble.tsx";
import { useAsk } from "../editor/useAsk.ts";
import { Icon } from "../panels/Icon.tsx";
import { useApp } from "../state/AppContext.tsx";
import { benchOf } from "../state/state.ts";
import { conditionNow } from "../state/views.ts";
import { conditionPhrase } from "../words/condition.ts";
import { expectationsOf, loadAtWork, loadsOf } from "./checking.ts";
import { checkLabel, expectedWord } from "./checkLabel.ts";

/** A function check of the circuit as it is set now: which load, what it should do, and what the check is called. */
export function AddCheck({ circuit }: { readonly circuit: Circuit }) {
  const [isOpen, setOpen] = useState<boolean | null>(circuit.checks.length === 0 ? true : null);
  if (!isOpen)
    return (
      <button
        type="button"
        // biome-ignore lint/a11y/noAutofocus: it comes back in place of the form that was just left
        autoFocus={isOpen === false}
        className="button is-low add-check"
        onClick={() => setOpen(true)}
      >
        <Icon name="add" size={16} />
        Add a check
      </button>
    );
  return <CheckForm circuit={circuit} close={() => setOpen(false)} />;
}

function CheckForm({ circuit, close }: { readonly circuit: Circuit; readonly close: () => void }) {
  const ask = useAsk();
  const condition = useApp(conditionNow);
  const loads = useApp((state) => loadsOf(benchOf(state)));
  const chosen = useApp(({ open }) => (open?.chosen?.is === "part" ? open.chosen.id : ""));
  const [picked, setPicked] = useState<string | null>(null);
  const atWork = useApp((state) => loadAtWork(benchOf(state)));
  const load = picked ?? (loads.some(({ id }) => id === chosen) ? chosen : atWork);
  const possible = useApp((state) => expectationsOf(benchOf(state), load));
  const [wanted, setWanted] = useState<Expectation | null>(null);
  const expect = wanted !== null && possible.includes(wanted) ? wanted : (possible[0] ?? "on");
  const [typed, setTyped] = useState<string | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const id = useId();
  if (loads.length === 0)
    return <p className="small add-check">A check needs a load: draw a lamp, a motor or a relay first.</p>;
  const label = typed ?? checkLabel(circuit, load, expect, condition);
  const add = (): void => {
    const said = ask((bench) => addCheck(bench, { label, condition, load, expect }));
    setTrouble(said);
    if (said === null) close();
  };
  return (
    <form
      ref={intoSight}
      className="add-check card"
      aria-label="Add a check"
      onSubmit={(event) => {
        event.preventDefault();
        add();
      }}
    >
      <p className="small">
        As it is set now: <b>{conditionPhrase(circuit, condition)}</b>
      </p>
      <label className="value">
        <span className="value-label small">Load</span>
        <span className="field">
          <select value={load} onChange={(event) => setPicked(event.target.value)}>
            {loads.map(({ id: part, label: about }) => (
              <option key={part} value={part}>
                {about === undefined ? part : `${part}, ${about}`}
              </option>
            ))}
          </select>
        </span>
      </label>
      <label className="value">
        <span className="value-label small">Should</span>
        <span className="field">
          <select value={expect} onChange={(event) => setWanted(event.target.value as Expectation)}>
            {possible.map((each) => (
              <option key={each} value={each}>
                {expectedWord(circuit, load, each)}
              </option>
            ))}
          </select>
        </span>
      </label>
      <label className="value">
        <span className="value-label small">Called</span>
        <span className={trouble === null ? "field" : "field is-wrong"}>
          <input
            value={label}
            maxLength={160}
            autoComplete="off"
            aria-invalid={trouble !== null}
            aria-describedby={trouble === null ? undefined : id}
            onChange={(event) => setTyped(event.target.value)}
          />
        </span>
        <Trouble words={trouble} id={id} />
      </label>
      <div className="value-acts">
        <button type="submit" className="button is-low">
          Add
        </button>
        <button type="button" className="button is-quiet is-low" onClick={close}>
          Not now
        </button>
      </div>
    </form>
  );
}

/** At the foot of a long list the form would open out of sight. */
function intoSight(form: HTMLFormElement | null): void {
  form?.scrollIntoView({ block: "nearest" });
}
