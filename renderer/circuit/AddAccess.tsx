import { type FormEvent, useState } from "react";
import { parseAmount } from "../../core/base/amount.ts";
import { addAccess } from "../../core/edit/commands/addAccess.ts";
import { Trouble } from "../editor/Trouble.tsx";
import { useAsked } from "../editor/useAsk.ts";
import type { Command } from "../state/action.ts";

/** A new access group: what comes off, and the minutes it takes. */
export function AddAccess({ close }: { readonly close: () => void }) {
  const { ask, trouble } = useAsked();
  const [label, setLabel] = useState("");
  const [minutes, setMinutes] = useState("");
  const add = (event: FormEvent): void => {
    event.preventDefault();
    if (ask(newAccess(label, minutes)) === null) close();
  };
  return (
    <form className="circuit-form" onSubmit={add}>
      <label className="value">
        <span className="value-label small">What comes off</span>
        <span className="field">
          <input
            // biome-ignore lint/a11y/noAutofocus: the person has just asked to type here
            autoFocus
            value={label}
            placeholder="Door trim off, 4 clips"
            autoComplete="off"
            onChange={(event) => setLabel(event.target.value)}
          />
        </span>
      </label>
      <label className="value">
        <span className="value-label small">Minutes for it</span>
        <span className="field">
          <input
            value={minutes}
            placeholder="0"
            inputMode="decimal"
            autoComplete="off"
            onChange={(event) => setMinutes(event.target.value)}
          />
          <span className="unit">min</span>
        </span>
      </label>
      <Trouble words={trouble} />
      <div className="value-acts">
        <button type="submit" className="button is-low">
          Add
        </button>
        <button type="button" className="button is-low is-quiet" onClick={close}>
          Leave it
        </button>
      </div>
    </form>
  );
}

/** Adds a group with its minutes as typed; the empty text is no time. Refuses a wrong amount, and as `addAccess` does. */
function newAccess(label: string, minutes: string): Command {
  return (bench) => {
    const amount = minutes.trim() === "" ? { ok: true as const, value: 0 } : parseAmount(minutes, "min");
    return amount.ok ? addAccess(bench, { label, minutes: amount.value }) : amount;
  };
}
