import { useMemo } from "react";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Positions } from "../../core/edit/positionTable.ts";
import type { Part } from "../../core/parts/kind.ts";
import { positionTitle } from "../words/condition.ts";
import { broughtTo } from "./feeding.ts";
import { readsAs } from "./readsAs.ts";

interface Shown {
  readonly circuit: Circuit;
  readonly part: Part;
  /** As the rows of the table stand. */
  readonly positions: Positions;
  readonly columns: readonly string[];
}

/** Each position in words, told by what the circuit brings to the terminals. */
export function ReadsAs({ circuit, part, positions, columns }: Shown) {
  const brought = useMemo(() => broughtTo(circuit, part), [circuit, part]);
  return (
    <section className="reads-as" aria-label="Reads as">
      <h3>Reads as</h3>
      <dl>
        {positions.map(({ name, joins }) => (
          <div key={name}>
            <dt>{positionTitle(name)}</dt>
            <dd>{readsAs(joins, columns, brought)}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
