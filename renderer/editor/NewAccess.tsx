import { type FormEvent, useState } from "react";
import { behindNew } from "./reaching.ts";
import { Trouble } from "./Trouble.tsx";
import { useAsked } from "./useAsk.ts";

/** A new access group for the part: what comes off, and the minutes it takes. */
export function NewAccess({ reach, close }: { readonly reach: string; readonly close: () => void }) {
  const { ask, trouble } = useAsked();
  const [label, setLabel] = useState("");
  const [minutes, setMinutes] = useState("");
  const add = (event: FormEvent): void => {
    event.preventDefault();
    if (ask(behindNew(reach, label, minutes)) === null) close();
  };
  return (
    <form className="new-access" onSubmit={add}>
      <label className="value">
        <span className="value-label small">What comes off</span>
        <span className="field">
          <input
            // biome-ignore lint/a11y/noAutofocus: it stands where "New…" was just chosen
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
      <div className="value-acts">
        <button type="submit" className="button is-low">
          Add
        </button>
        <button type="button" className="button is-low is-quiet" onClick={close}>
          Leave it
        </button>
      </div>
      <Trouble words={trouble} />
    </form>
  );
}
