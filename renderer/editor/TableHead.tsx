import type { Circuit } from "../../core/circuit/circuit.ts";
import { terminalsOf } from "../../core/circuit/points.ts";
import { changeTerminals } from "../../core/edit/commands/changeTerminals.ts";
import type { Part } from "../../core/parts/kind.ts";
import { InPlace } from "./InPlace.tsx";
import { TerminalCode } from "./TerminalCode.tsx";
import { useAsk } from "./useAsk.ts";

interface Shown {
  readonly circuit: Circuit;
  readonly part: Part;
  /** Terminals in the order of the columns. */
  readonly columns: readonly string[];
  readonly fresh: string | null;
}

/** The terminals over the columns of the table, each with the wire that ends there. */
export function TableHead({ circuit, part, columns, fresh }: Shown) {
  const ask = useAsk();
  const terminals = terminalsOf(circuit, part);
  const rename = (terminal: string, typed: string) =>
    ask((bench) =>
      changeTerminals(
        bench,
        part.id,
        terminals.map((each) => (each === terminal ? typed : each)),
      ),
    );
  return (
    <thead>
      <tr className="chart-row">
        <th scope="col" className="chart-name">
          <span className="unseen">Position</span>
        </th>
        {columns.map((terminal) => (
          <th scope="col" className="chart-terminal" key={terminal}>
            <InPlace
              name={`Terminal ${terminal}`}
              value={terminal}
              className="is-middle"
              isFresh={terminal === fresh}
              take={(typed) => rename(terminal, typed)}
            />
            <TerminalCode circuit={circuit} part={part} terminal={terminal} />
          </th>
        ))}
      </tr>
    </thead>
  );
}
