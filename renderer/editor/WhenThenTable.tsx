import { changeTable } from "../../core/edit/commands/changeTable.ts";
import type { Part, PinRole, WhenThen } from "../../core/parts/kind.ts";
import { Icon } from "../panels/Icon.tsx";
import { rowWords } from "./moduleWords.ts";
import { Trouble } from "./Trouble.tsx";
import { useAsked } from "./useAsk.ts";
import { WhenThenRow } from "./WhenThenRow.tsx";

interface Shown {
  readonly part: Part;
  readonly roles: ReadonlyMap<string, PinRole>;
}

/** What a module joins inside, row by row: while the inputs are as asked, the pairs are joined. */
export function WhenThenTable({ part, roles }: Shown) {
  const { ask, trouble } = useAsked();
  const rows = part.table ?? [];
  const change = (next: readonly WhenThen[]) => ask((bench) => changeTable(bench, part.id, next));
  return (
    <section aria-label="When and then">
      <h3>When and then</h3>
      <p className="small">
        {rows.length === 0
          ? "Nothing is said of what it does. Its drivers are undecided until they are driven by hand."
          : "While the inputs of a row are as asked, its pairs are joined inside."}
      </p>
      <ol className="when-rows">
        {rows.map((row, index) => (
          <WhenThenRow
            key={index}
            number={index + 1}
            row={row}
            roles={roles}
            onChange={(next) => change(rows.map((each, at) => (at === index ? next : each)))}
            onRemove={() => change(rows.filter((_, at) => at !== index))}
          />
        ))}
      </ol>
      <Trouble words={trouble} />
      <div className="chart-acts">
        <button type="button" className="button" onClick={() => change([...rows, firstRow(roles)])}>
          <Icon name="add" />
          Row
        </button>
      </div>
      {rows.length > 0 && (
        <section className="reads-as" aria-label="Reads as">
          <h3>Reads as</h3>
          <ul>
            {rows.map((row, index) => (
              <li key={index}>{rowWords(row)}</li>
            ))}
          </ul>
        </section>
      )}
    </section>
  );
}

/** A new row asks the first input to be high, and joins the first driver to its rail. */
function firstRow(roles: ReadonlyMap<string, PinRole>): WhenThen {
  const first = (...wanted: readonly PinRole[]) => [...roles].find(([, role]) => wanted.includes(role))?.[0];
  const [input, driver] = [first("input"), first("drives-high", "drives-low")];
  const rail = driver !== undefined && first(roles.get(driver) === "drives-low" ? "ground" : "supply");
  return {
    when: input === undefined ? {} : { [input]: "high" },
    joins: driver !== undefined && rail ? [[rail, driver]] : [],
  };
}
