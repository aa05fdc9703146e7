import { memo } from "react";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { PositionTable } from "../../core/diagnose/positionTable.ts";
import { setUp } from "../../core/edit/commands/setUp.ts";
import { useAppStore } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { allSame, columnTitle, sameAs } from "../words/table.ts";
import { PositionReading } from "./PositionReading.tsx";
import { WireCode } from "./WireCode.tsx";

/** One row for each position, one column for each pin: positions outnumber pins on most plugs. */
export const PositionRows = memo(function PositionRows({
  circuit,
  table,
  plugged,
}: {
  readonly circuit: Circuit;
  readonly table: PositionTable;
  readonly plugged: boolean;
}) {
  const { dispatch } = useAppStore();
  const make = useMake();
  const columns = table.columns.flatMap((column, index) => (column.plugged === plugged ? [{ column, index }] : []));
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than its panel is scrolled with the arrow keys
    <section className="table-scroll" tabIndex={0} aria-label={`Readings of ${table.connector}`}>
      <table className="positions">
        <thead>
          <tr>
            <th scope="col">Position</th>
            {table.rows.map((row) => (
              <th scope="col" key={row.point}>
                <button
                  type="button"
                  className="pin"
                  title={`Find ${row.point} on the drawing`}
                  onClick={() => dispatch({ do: "find", thing: { is: "point", id: row.point } })}
                >
                  <b className="together">{row.point}</b>
                  {row.colour !== null && <WireCode code={row.colour} set={circuit.colourCodes} />}
                  <span className="caption">{row.leadsTo}</span>
                </button>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {columns.map(({ column, index }) => (
            <tr key={index}>
              <th scope="row">
                <button
                  type="button"
                  className="pin"
                  title="Set the drawing so"
                  onClick={() => make((bench) => setUp(bench, column.condition))}
                >
                  {columnTitle(circuit, column)}
                  {column.merged.length > 0 && (
                    <span className="caption" title={allSame(circuit, column)}>
                      {sameAs(circuit, column)}
                    </span>
                  )}
                </button>
              </th>
              {table.rows.map((row) => (
                <td key={row.point}>
                  <PositionReading cell={row.cells[index]!} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
});
