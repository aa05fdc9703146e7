import { type FormEvent, useState } from "react";
import { Trouble } from "../editor/Trouble.tsx";
import { useAsked } from "../editor/useAsk.ts";
import { Icon } from "../panels/Icon.tsx";
import type { Command } from "../state/action.ts";
import { CautionField } from "./CautionField.tsx";

interface Shown {
  /** What they are cautions of, for those who do not see where the list stands. */
  readonly of: string;
  readonly cautions: readonly string[];
  /** The edit that makes these the cautions. */
  readonly change: (cautions: readonly string[]) => Command;
}

/** Cautions, each to be changed where it stands or taken out, and a field for one more. */
export function CautionList({ of, cautions, change }: Shown) {
  const { ask, trouble } = useAsked();
  const [typed, setTyped] = useState("");
  const add = (event: FormEvent): void => {
    event.preventDefault();
    if (typed.trim() !== "" && ask(change([...cautions, typed])) === null) setTyped("");
  };
  return (
    <div className="caution-list">
      <ul>
        {cautions.map((caution, at) => (
          // Two cautions may say the same, so that the place alone tells them apart.
          <li key={`${at} ${caution}`} className="caution-row">
            <Icon name="note" size={16} />
            <CautionField
              name={`Caution ${at + 1} of ${of}`}
              value={caution}
              take={(next) => ask(change(cautions.map((each, index) => (index === at ? next : each))))}
            />
            <button
              type="button"
              className="icon-button is-small"
              aria-label={`Take out: ${caution}`}
              title="Take this caution out"
              onClick={() => ask(change(cautions.filter((_, index) => index !== at)))}
            >
              <Icon name="close" size={16} />
            </button>
          </li>
        ))}
      </ul>
      <form className="caution-add" onSubmit={add}>
        <label className={trouble === null ? "field" : "field is-wrong"}>
          <span className="unseen">New caution of {of}</span>
          <input
            value={typed}
            placeholder="Hands and tools clear of the vent frame"
            autoComplete="off"
            onChange={(event) => setTyped(event.target.value)}
          />
        </label>
        <button type="submit" className="button is-low">
          Add
        </button>
      </form>
      <Trouble words={trouble} />
    </div>
  );
}
