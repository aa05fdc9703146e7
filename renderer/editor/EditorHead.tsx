import type { Circuit } from "../../core/circuit/circuit.ts";
import { duplicateThings } from "../../core/edit/commands/duplicateThings.ts";
import { kindOf } from "../../core/parts/catalogue.ts";
import type { Part } from "../../core/parts/kind.ts";
import { Icon } from "../panels/Icon.tsx";
import { useAppStore } from "../state/AppContext.tsx";
import { circuitNow } from "../state/views.ts";
import { partAbout } from "./partAbout.ts";
import { Trouble } from "./Trouble.tsx";
import { useAsked } from "./useAsk.ts";

interface Shown {
  readonly circuit: Circuit;
  readonly part: Part;
  readonly close: () => void;
}

/** How far a double stands off what it was made from, grid units. */
const OFF = 4;

/** What is edited, in words; back to the drawing, and the part once more. */
export function EditorHead({ circuit, part, close }: Shown) {
  const { ask, trouble } = useAsked();
  const { dispatch, getState } = useAppStore();
  const duplicate = (): void => {
    if (ask((bench) => duplicateThings(bench, [part.id], OFF, OFF)) !== null) return;
    const now = circuitNow(getState());
    const double = now?.parts.find(({ id }) => circuit.parts.every((each) => each.id !== id));
    if (!double) return;
    dispatch({ do: "choose", thing: { is: "part", id: double.id } });
    dispatch({ do: "edit-part", part: double.id });
  };
  return (
    <header className="editor-head">
      <button type="button" className="icon-button" aria-label="Back to the drawing" onClick={close}>
        <Icon name="back" />
      </button>
      <h2>
        {part.id} <span>{part.label ?? kindOf(part.kind)?.title}</span>
      </h2>
      <p className="small">{partAbout(circuit, part)}</p>
      <div className="editor-acts">
        {circuit.placement.parts[part.id] && (
          <button type="button" className="button" onClick={duplicate}>
            Duplicate
          </button>
        )}
        <button type="button" className="button is-main" onClick={close}>
          Done
        </button>
      </div>
      <Trouble words={trouble} />
    </header>
  );
}
