import { type ReactNode, useState } from "react";
import type { Circuit, Page } from "../../core/circuit/circuit.ts";
import { Trouble } from "../editor/Trouble.tsx";
import { useAsked } from "../editor/useAsk.ts";
import type { Command } from "../state/action.ts";
import { useFocusBack } from "./useFocusBack.ts";

interface Shown {
  readonly circuit: Circuit;
  /** The page that goes away; all others are offered. */
  readonly page: Page;
  /** Id of the page that is offered first. */
  readonly first: string;
  readonly label: string;
  /** What the button says that does it. */
  readonly act: string;
  readonly make: (goal: string) => Command;
  /** Told once it is done, before the question goes. */
  readonly onDone?: (goal: string) => void;
  readonly close: () => void;
  /** What comes of it, in words. */
  readonly children: ReactNode;
}

/** Asks to which other page goes what stands on one that goes away. */
export function PageQuestion({ circuit, page, first, label, act, make, onDone, close, children }: Shown) {
  const { ask, trouble } = useAsked();
  const [goal, setGoal] = useState(first);
  const focusBack = useFocusBack();
  const take = (): void => {
    if (ask(make(goal)) !== null) return;
    onDone?.(goal);
    close();
  };
  return (
    <div className="circuit-form">
      <p className="small">{children}</p>
      <label className="value">
        <span className="value-label small">{label}</span>
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
        <button type="button" className="button is-low" onClick={take}>
          {act}
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
