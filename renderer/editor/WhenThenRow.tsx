import type { PinRole, WhenThen } from "../../core/parts/kind.ts";
import { Icon } from "../panels/Icon.tsx";
import { asked } from "./moduleWords.ts";

interface Shown {
  readonly number: number;
  readonly row: WhenThen;
  readonly roles: ReadonlyMap<string, PinRole>;
  readonly onChange: (row: WhenThen) => void;
  readonly onRemove: () => void;
}

/** One row of a module's table: what each input must be, and the pairs that are then joined. */
export function WhenThenRow({ number, row, roles, onChange, onRemove }: Shown) {
  const pins = [...roles.keys()];
  const inputs = pins.filter((pin) => roles.get(pin) === "input" || row.when[pin] !== undefined);
  const free = freePair(pins, row);
  const withJoins = (joins: WhenThen["joins"]) => onChange({ ...row, joins });
  return (
    <li className="when-row">
      <span className="small">When</span>
      <div className="when-cells">
        {inputs.map((pin) => (
          <label key={pin} className="when-cell">
            <b>{pin}</b>
            <span className="inline-select">
              <select
                aria-label={`Row ${number}, ${pin}`}
                value={row.when[pin] ?? ""}
                onChange={({ target: { value } }) =>
                  onChange(asked(row, pin, value === "high" || value === "low" ? value : null))
                }
              >
                <option value="">any</option>
                <option value="high">high</option>
                <option value="low">low</option>
              </select>
            </span>
          </label>
        ))}
        {inputs.length === 0 && <span className="small">no input is named</span>}
      </div>
      <button
        type="button"
        className="icon-button is-small"
        aria-label={`Remove row ${number}`}
        title={`Remove row ${number}`}
        onClick={onRemove}
      >
        <Icon name="bin" size={16} />
      </button>
      <span className="small">Then</span>
      <div className="when-cells">
        {row.joins.map(([a, b], at) => (
          <span key={`${a} ${b}`} className="when-cell">
            <PinSelect
              name={`Row ${number}, pair ${at + 1}, one pin`}
              pins={pins.filter((pin) => pin !== b)}
              value={a}
              onChange={(pin) => withJoins(row.joins.map((pair, index) => (index === at ? [pin, b] : pair)))}
            />
            to
            <PinSelect
              name={`Row ${number}, pair ${at + 1}, the other pin`}
              pins={pins.filter((pin) => pin !== a)}
              value={b}
              onChange={(pin) => withJoins(row.joins.map((pair, index) => (index === at ? [a, pin] : pair)))}
            />
            <button
              type="button"
              className="icon-button is-tiny"
              aria-label={`Part ${a} and ${b}`}
              title={`Part ${a} and ${b}`}
              onClick={() => withJoins(row.joins.filter((_, index) => index !== at))}
            >
              <Icon name="less" size={16} />
            </button>
          </span>
        ))}
        {free && (
          <button type="button" className="button is-quiet is-low" onClick={() => withJoins([...row.joins, free])}>
            Join a pair
          </button>
        )}
      </div>
    </li>
  );
}

interface Selected {
  readonly name: string;
  readonly pins: readonly string[];
  readonly value: string;
  readonly onChange: (pin: string) => void;
}

function PinSelect({ name, pins, value, onChange }: Selected) {
  return (
    <span className="inline-select">
      <select aria-label={name} value={value} onChange={({ target }) => onChange(target.value)}>
        {pins.map((pin) => (
          <option key={pin} value={pin}>
            {pin}
          </option>
        ))}
      </select>
    </span>
  );
}

/** The first pair of pins that the row does not join yet; the names are put right afterwards. */
function freePair(pins: readonly string[], { joins }: WhenThen): readonly [string, string] | null {
  for (const a of pins) {
    const b = pins.find((pin) => pin !== a && !joins.some((pair) => pair.includes(a) && pair.includes(pin)));
    if (b !== undefined) return [a, b];
  }
  return null;
}
