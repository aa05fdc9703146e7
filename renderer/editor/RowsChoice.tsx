import { type FormEvent, useState } from "react";
import type { Connector } from "../../core/circuit/circuit.ts";
import { setRows } from "../../core/edit/commands/setRows.ts";
import { Icon } from "../panels/Icon.tsx";
import { Popover } from "../panels/Popover.tsx";
import { arranged, arrangements, type Rows, rowsWords } from "./faceRows.ts";
import { Trouble } from "./Trouble.tsx";
import { useAsked } from "./useAsk.ts";

/** Most rows and places that are typed here; a longer face comes with its pin list. */
const MOST = 40;

/** How the places of a connector are set out, as a choice. */
export function RowsChoice({ plug }: { readonly plug: Connector }) {
  const { ask, trouble } = useAsked();
  const now = rowsWords(plug.rows);
  const set = (rows: Rows): boolean => ask((bench) => setRows(bench, plug.id, rows)) === null;
  return (
    <Popover
      label={`${now}, set out otherwise`}
      className="button"
      place="below"
      button={
        <>
          {now}
          <Icon name="down" size={16} />
        </>
      }
    >
      {(close) => (
        <div className="rows-card">
          <ul className="menu">
            {arrangements(plug.rows).map((rows) => (
              <li key={rowsWords(rows)}>
                <button type="button" className="menu-item" onClick={() => set(rows) && close()}>
                  {rowsWords(rows)}
                  {JSON.stringify(rows) === JSON.stringify(plug.rows) && <Icon name="tick" size={16} />}
                </button>
              </li>
            ))}
          </ul>
          <RowsForm rows={plug.rows} set={(rows) => set(rows) && close()} />
          <Trouble words={trouble} />
        </div>
      )}
    </Popover>
  );
}

/** Any number of rows and places: new places are numbered on, the last ones go. */
function RowsForm({ rows, set }: { readonly rows: Rows; readonly set: (rows: Rows) => void }) {
  const [down, setDown] = useState(String(rows.length));
  const [across, setAcross] = useState(String(Math.max(...rows.map((row) => row.length))));
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    set(arranged(rows, Number(down), Number(across)));
  };
  return (
    <form className="rows-form small" onSubmit={submit}>
      <Count name="Rows" value={down} onChange={setDown} />
      rows of
      <Count name="Places in a row" value={across} onChange={setAcross} />
      <button type="submit" className="button is-low">
        Set
      </button>
    </form>
  );
}

interface Counted {
  readonly name: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
}

function Count({ name, value, onChange }: Counted) {
  return (
    <span className="field">
      <input
        type="number"
        min={1}
        max={MOST}
        required
        aria-label={name}
        value={value}
        onChange={(event) => onChange(event.target.value)}
      />
    </span>
  );
}
