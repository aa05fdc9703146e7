import { changePositions } from "../../core/edit/commands/changePositions.ts";
import { type Positions, positionRenamed } from "../../core/edit/positionTable.ts";
import { positionTitle } from "../words/condition.ts";
import { Bars, heightOf } from "./Bars.tsx";
import { barsOf } from "./bars.ts";
import { Circle } from "./Circle.tsx";
import { InPlace } from "./InPlace.tsx";
import { groupsOf } from "./joining.ts";
import { PositionActs } from "./PositionActs.tsx";
import { circleWords } from "./tableWords.ts";
import { type Ask, useAsk } from "./useAsk.ts";

/** A place in the table: rows as they are shown, columns in lead order, both from 0. */
export interface Place {
  readonly row: number;
  readonly column: number;
}

interface Shown {
  readonly part: string;
  readonly control: string;
  readonly positions: Positions;
  /** Place among the positions, rest 0, and among the rows shown. */
  readonly index: number;
  readonly row: number;
  readonly columns: readonly string[];
  readonly isNow: boolean;
  readonly isFresh: boolean;
  /** Terminal chosen in this row. */
  readonly chosen: string | null;
  /** Column that Tab comes to in this row; null where it comes to another row. */
  readonly stop: number | null;
  readonly ask: Ask;
  readonly onChoose: (terminal: string) => void;
  readonly onPlace: (place: Place) => void;
  readonly onShow: (position: string | null) => void;
}

/** One position of the chart: its name, what it does when let go, and its circles. Under pointer or focus it is shown. */
export function TableRow(shown: Shown) {
  const { part, control, positions, index, row, columns, isNow, isFresh, chosen, stop, ask } = shown;
  const askName = useAsk();
  const position = positions[index]!;
  const { name } = position;
  const groups = groupsOf(position.joins, columns);
  const groupOf = (terminal: string) => groups.find((group) => group.includes(terminal)) ?? [];
  const partners = chosen === null ? [] : groupOf(chosen).filter((each) => each !== chosen);
  const bars = barsOf(groups, columns);
  const isOffered = (column: number): boolean => partners.length > 0 && groupOf(chosen!).includes(columns[column]!);
  return (
    <tr
      className={isNow ? "chart-row is-now" : "chart-row"}
      style={{ height: heightOf(bars) }}
      onPointerEnter={() => shown.onShow(name)}
      onPointerLeave={() => shown.onShow(null)}
      onFocus={() => shown.onShow(name)}
      onBlur={() => shown.onShow(null)}
    >
      <th scope="row" className="chart-name">
        <InPlace
          name={`Position ${name}`}
          value={positionTitle(name)}
          isFresh={isFresh}
          take={(typed) =>
            askName((bench) => changePositions(bench, part, control, positionRenamed(positions, index, typed)))
          }
        />
        <PositionActs part={part} control={control} positions={positions} index={index} isNow={isNow} ask={ask} />
      </th>
      {columns.map((terminal, column) => (
        <td key={terminal} className="chart-cell">
          {column === 0 && (
            <Bars
              bars={bars}
              count={columns.length}
              isOffered={({ from, to }) => isOffered(from) && [from, to].some((at) => columns[at] === chosen)}
            />
          )}
          <Circle
            row={row}
            column={column}
            words={circleWords(
              terminal,
              name,
              groupOf(terminal).filter((each) => each !== terminal),
            )}
            isJoined={groupOf(terminal).length > 0}
            isChosen={terminal === chosen}
            isPartner={partners.includes(terminal)}
            isStop={column === stop}
            onChoose={() => shown.onChoose(terminal)}
            onFocus={() => shown.onPlace({ row, column })}
          />
        </td>
      ))}
    </tr>
  );
}
