import { useState } from "react";
import type { Circuit, Page } from "../../core/circuit/circuit.ts";
import { removePage } from "../../core/edit/commands/removePage.ts";
import { Trouble } from "../editor/Trouble.tsx";
import { useAsked } from "../editor/useAsk.ts";
import { counted } from "../words/figures.ts";
import { namedFew, standingOn } from "./pages.ts";
import { useFocusBack } from "./useFocusBack.ts";

interface Shown {
  readonly circuit: Circuit;
  readonly page: Page;
  readonly close: () => void;
}

/** What stands on a page that is to go, and where it can be moved to. */
export function RemovePage({ circuit, page, close }: Shown) {
  const { ask, trouble } = useAsked();
  const others = circuit.pages.filter(({ id }) => id !== page.id);
  const [goal, setGoal] = useState(others[0]?.id ?? "");
  const focusBack = useFocusBack();
  const standing = standingOn(circuit, page.id);
  const move = (): void => {
    if (ask((bench) => removePage(bench, page.id, goal)) === null) close();
  };
  return (
    <div className="circuit-form">
      <p className="small">
        <b>{counted(standing.length, "part stands", "parts stand")} on this page:</b> {namedFew(standing)}. Each goes to
        the same place of another page.
      </p>
      <label className="value">
        <span className="value-label small">Move to</span>
        <span className="field">
          <select
            // biome-ignore lint/a11y/noAutofocus: the person has just asked for this
            autoFocus
            value={goal}
            onChange={(event) => setGoal(event.target.value)}
          >
            {others.map(({ id, title }) => (
              <option key={id} value={id}>
                {title}
              </option>
            ))}
          </select>
        </span>
      </label>
      <Trouble words={trouble} />
      <div className="value-acts">
        <button type="button" className="button is-low" onClick={move}>
          Move and remove
        </button>
        <button
          type="button"
          className="button is-low is-quiet"
          onClick={() => {
            focusBack();
            close();
          }}
        >
          Leave it
        </button>
      </div>
    </div>
  );
}
