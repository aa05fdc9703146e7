import { type FormEvent, useState } from "react";
import type { Command } from "../state/action.ts";
import { Trouble } from "./Trouble.tsx";
import { useAsked } from "./useAsk.ts";

interface Shown {
  readonly className: string;
  /** The edit that makes the group of what was typed. */
  readonly make: (label: string, minutes: string) => Command;
  readonly close: () => void;
}

/** A new access group: what comes off, and the minutes it takes. */
export function AccessForm({ className, make, close }: Shown) {
  const { ask, trouble } = useAsked();
  const [label, setLabel] = useState("");
  const [minutes, setMinutes] = useState("");
  const add = (event: FormEvent): void => {
    event.preventDefault();
    if (ask(make(label, minutes)) === null) close();
  };
  return (
    <form className={className} onSubmit={add}>
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
