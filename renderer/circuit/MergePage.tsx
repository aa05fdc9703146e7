import { useState } from "react";
import type { Circuit, Page } from "../../core/circuit/circuit.ts";
import { mergePages } from "../../core/edit/commands/mergePages.ts";
import { Trouble } from "../editor/Trouble.tsx";
import { useAsked } from "../editor/useAsk.ts";
import { useAppStore } from "../state/AppContext.tsx";
import { useFocusBack } from "./useFocusBack.ts";

interface Shown {
  readonly circuit: Circuit;
  readonly page: Page;
  readonly close: () => void;
}

/** Into which page another one is merged; the page before it is offered first. */
export function MergePage({ circuit, page, close }: Shown) {
  const { ask, trouble } = useAsked();
  const { dispatch } = useAppStore();
  const focusBack = useFocusBack();
  const at = circuit.pages.indexOf(page);
  const [goal, setGoal] = useState((circuit.pages[at - 1] ?? circuit.pages[at + 1])?.id ?? "");
  const merge = (): void => {
    if (ask((bench) => mergePages(bench, page.id, goal)) !== null) return;
    dispatch({ do: "show-page", page: goal });
    dispatch({ do: "wish", want: { zoom: "fit" } });
    close();
  };
  return (
    <div className="circuit-form">
      <p className="small">
        <b>All of this page goes onto the other,</b> beside or below what stands there. Where two page links joined just
        these two, one wire takes their place if the wires at them are alike.
      </p>
      <label className="value">
        <span className="value-label small">Merge into</span>
        <span className="field">
          <select
            // biome-ignore lint/a11y/noAutofocus: the person has just asked for this
            autoFocus
            value={goal}
            onChange={(event) => setGoal(event.target.value)}
          >
            {circuit.pages.map(({ id, title }, index) =>
              id === page.id ? null : (
                <option key={id} value={id}>
                  {index + 1} {title}
                </option>
              ),
            )}
          </select>
        </span>
      </label>
      <Trouble words={trouble} />
      <div className="value-acts">
        <button type="button" className="button is-low" onClick={merge}>
          Merge
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
