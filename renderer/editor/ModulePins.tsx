import { useState } from "react";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { terminalPoint, wireSideOf } from "../../core/circuit/points.ts";
import { wiresAt } from "../../core/diagnose/testPoint.ts";
import type { Part, PinRole } from "../../core/parts/kind.ts";
import { Icon } from "../panels/Icon.tsx";
import type { Command } from "../state/action.ts";
import { counted } from "../words/figures.ts";
import { InPlace } from "./InPlace.tsx";
import { ROLES } from "./moduleWords.ts";
import { pinsNamed, roleChanged } from "./pinActs.ts";
import { TerminalCode } from "./TerminalCode.tsx";
import { Trouble } from "./Trouble.tsx";
import { freshNumber } from "./tableWords.ts";
import { useAsk, useAsked } from "./useAsk.ts";

interface Shown {
  readonly circuit: Circuit;
  readonly part: Part;
  readonly roles: ReadonlyMap<string, PinRole>;
}

/** The pins of a module: name, what each is, and the wire that ends there. */
export function ModulePins({ circuit, part, roles }: Shown) {
  const { ask, trouble } = useAsked();
  const askName = useAsk();
  const [fresh, setFresh] = useState<string | null>(null);
  const pins = [...roles.keys()];
  const named = (names: readonly string[]): Command => pinsNamed(part, roles, names);
  const add = (): void => {
    const name = freshNumber(pins);
    setFresh(name);
    ask(named([...pins, name]));
  };
  return (
    <section aria-label="Pins">
      <h3>Pins</h3>
      <p className="small">What each pin is. An input is read, a driver joins its pin to feed or ground.</p>
      <ul className="module-pins">
        {[...roles].map(([pin, role], index) => (
          <li key={index}>
            <InPlace
              name={`Pin ${pin}`}
              value={pin}
              isFresh={pin === fresh}
              take={(typed) => askName(named(pins.map((each) => (each === pin ? typed : each))))}
            />
            <span className="field">
              <select
                aria-label={`What pin ${pin} is`}
                value={role}
                onChange={({ target }) =>
                  ask(roleChanged(part, roles, pin, ROLES.find(([each]) => each === target.value)![0]))
                }
              >
                {ROLES.map(([each, words]) => (
                  <option key={each} value={each}>
                    {words}
                  </option>
                ))}
              </select>
            </span>
            <TerminalCode circuit={circuit} part={part} terminal={pin} />
            {pins.length > 1 && (
              <button
                type="button"
                className="icon-button is-small"
                aria-label={removeWords(circuit, part, pin)}
                title={removeWords(circuit, part, pin)}
                onClick={() => ask(named(pins.filter((each) => each !== pin)))}
              >
                <Icon name="bin" size={16} />
              </button>
            )}
          </li>
        ))}
      </ul>
      <Trouble words={trouble} />
      <div className="chart-acts">
        <button type="button" className="button" onClick={add}>
          <Icon name="add" />
          Pin
        </button>
      </div>
    </section>
  );
}

function removeWords(circuit: Circuit, part: Part, pin: string): string {
  const count = wiresAt(circuit, wireSideOf(circuit, terminalPoint(part, pin))).length;
  return count === 0 ? `Remove pin ${pin}` : `Remove pin ${pin} and ${counted(count, "wire")}`;
}
