import { changePositions } from "../../core/edit/commands/changePositions.ts";
import { removeControl } from "../../core/edit/commands/removeControl.ts";
import { renameControl } from "../../core/edit/commands/renameControl.ts";
import type { Control, Part, Position } from "../../core/parts/kind.ts";
import { Icon } from "../panels/Icon.tsx";
import { Popover } from "../panels/Popover.tsx";
import { InPlace } from "./InPlace.tsx";
import { Trouble } from "./Trouble.tsx";
import { controlWords } from "./tableWords.ts";
import { useAsk, useAsked } from "./useAsk.ts";

interface Shown {
  readonly part: Part;
  readonly controls: readonly Control[];
  /** Place of the control whose table is shown. */
  readonly at: number;
  readonly onShow: (at: number) => void;
}

/** What a new control starts with: one contact could be joined in its second position. */
const FIRST: readonly Position[] = [
  { name: "off", joins: [] },
  { name: "on", joins: [] },
];

/** The controls of a panel, one of them shown; a new one, another name, and one less. */
export function ControlTabs({ part, controls, at, onShow }: Shown) {
  const { ask, trouble } = useAsked();
  const askName = useAsk();
  const shown = controls[at]!;
  const add = (): void => {
    const said = ask((bench) => changePositions(bench, part.id, freshControl(controls), FIRST));
    if (said === null) onShow(controls.length);
  };
  return (
    <>
      <div className="control-tabs">
        {/* biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as this row is */}
        <div className="segments" role="group" aria-label="Controls of the panel">
          {controls.map((control, index) => (
            <button
              key={control.name}
              type="button"
              className={index === at ? "segment is-now" : "segment"}
              aria-pressed={index === at}
              onClick={() => onShow(index)}
            >
              {controlWords(control)}
            </button>
          ))}
        </div>
        <Popover
          label="Name of the control, more controls"
          className="icon-button is-small"
          place="below"
          button={<Icon name="more" />}
        >
          {(close) => (
            <div className="control-card">
              <span className="small">Name</span>
              <InPlace
                name="Name of the control"
                value={shown.name}
                className="is-field"
                take={(typed) => askName((bench) => renameControl(bench, part.id, shown.name, typed, shown.label))}
              />
              <span className="small">Label</span>
              <InPlace
                name="Label of the control"
                value={shown.label ?? ""}
                className="is-field"
                take={(typed) => askName((bench) => renameControl(bench, part.id, shown.name, shown.name, typed))}
              />
              <ul className="menu">
                <li>
                  <button
                    type="button"
                    className="menu-item"
                    onClick={() => {
                      close();
                      add();
                    }}
                  >
                    Another control
                  </button>
                </li>
                {controls.length > 1 && (
                  <li>
                    <button
                      type="button"
                      className="menu-item"
                      onClick={() => {
                        close();
                        if (ask((bench) => removeControl(bench, part.id, shown.name)) === null) onShow(0);
                      }}
                    >
                      Remove {controlWords(shown)}
                    </button>
                  </li>
                )}
              </ul>
            </div>
          )}
        </Popover>
      </div>
      <Trouble words={trouble} />
    </>
  );
}

function freshControl(controls: readonly Control[]): string {
  for (let number = controls.length + 1; ; number++) {
    const name = `control-${number}`;
    if (controls.every((control) => control.name !== name)) return name;
  }
}
