import { type FormEvent, useId, useState } from "react";
import { sentence } from "../../core/base/words.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { wireAcross } from "../../core/edit/commands/wireAcross.ts";
import { type ConnectorSide, connectorSides, pagesOfPairs, pairsAcross } from "../../core/edit/connectorSides.ts";
import { useAppStore } from "../state/AppContext.tsx";
import { benchOf } from "../state/state.ts";
import { counted } from "../words/figures.ts";

interface Shown {
  readonly circuit: Circuit;
  readonly connector: string;
  readonly close: () => void;
}

/** Leads all wires of a connector at once: across to another one, or by hand from all its places. */
export function WireAcross({ circuit, connector, close }: Shown) {
  const { dispatch } = useAppStore();
  const sides = connectorSides(circuit);
  const own = sides.filter((side) => side.connector === connector && side.points.length > 0);
  if (own.length === 0) return null;
  return (
    <details className="menu-values">
      <summary>Wire all of {connector}</summary>
      <Across circuit={circuit} own={own} sides={sides} close={close} />
      <div className="value-acts">
        {own.map(({ id, points }) => (
          <button
            key={id}
            type="button"
            className="button is-low"
            onClick={() => {
              dispatch({ do: "use-tool", tool: { is: "wire", gathered: points } });
              close();
            }}
          >
            Lead {counted(points.length, "wire")} from {id} by hand
          </button>
        ))}
      </div>
    </details>
  );
}

interface Choosing {
  readonly circuit: Circuit;
  readonly own: readonly ConnectorSide[];
  readonly sides: readonly ConnectorSide[];
  readonly close: () => void;
}

function Across({ circuit, own, sides, close }: Choosing) {
  const { dispatch, getState } = useAppStore();
  const goals = own.flatMap((from) =>
    sides.flatMap((to) => {
      const pairs = to.connector === from.connector ? [] : pairsAcross(circuit, from, to);
      return pairs.length > 0 && pagesOfPairs(circuit, pairs).length <= 1 ? [{ from, to, count: pairs.length }] : [];
    }),
  );
  // Where most wires would go is likeliest meant.
  goals.sort((one, other) => other.count - one.count);
  const [chosen, setChosen] = useState(0);
  const [colours, setColours] = useState("");
  const [trouble, setTrouble] = useState<string | null>(null);
  const id = useId();
  const goal = goals[chosen] ?? goals[0];
  if (!goal) return <p className="small">There is no other connector on this page to wire it to.</p>;
  const take = (event: FormEvent): void => {
    event.preventDefault();
    const bench = benchOf(getState());
    const edit = bench && wireAcross(bench, goal.from.id, goal.to.id, colours);
    if (!edit) return;
    if (!edit.ok) {
      setTrouble(sentence(edit.refusal));
      return;
    }
    dispatch({ do: "make", command: (now) => wireAcross(now, goal.from.id, goal.to.id, colours) });
    close();
  };
  return (
    <form className="across values" onSubmit={take}>
      <label className="value-label small" htmlFor={`${id}-to`}>
        Across to
      </label>
      <span className="field">
        <select id={`${id}-to`} value={goals.indexOf(goal)} onChange={(event) => setChosen(Number(event.target.value))}>
          {goals.map(({ from, to, count }, index) => (
            <option key={`${from.id} ${to.id}`} value={index}>
              {own.length > 1 ? `${from.id} to ${to.id}` : to.id}
              {to.label === undefined ? "" : `, ${to.label}`} ({counted(count, "wire")})
            </option>
          ))}
        </select>
      </span>
      <label className="value-label small" htmlFor={`${id}-colours`}>
        Colours
      </label>
      <span className={trouble === null ? "field" : "field is-wrong"}>
        <input
          id={`${id}-colours`}
          value={colours}
          placeholder="GY OG - BK, in order, if known"
          autoComplete="off"
          aria-invalid={trouble !== null}
          aria-describedby={trouble === null ? undefined : `${id}-trouble`}
          onChange={(event) => setColours(event.target.value)}
        />
      </span>
      {trouble !== null && (
        <p className="value-trouble small" id={`${id}-trouble`} role="alert">
          {trouble}
        </p>
      )}
      <button type="submit" className="button">
        Draw {counted(goal.count, "wire")}
      </button>
    </form>
  );
}
