import { changePositions } from "../../core/edit/commands/changePositions.ts";
import { type Positions, positionMoved, positionRemoved, positionSprings } from "../../core/edit/positionTable.ts";
import { Icon } from "../panels/Icon.tsx";
import { Popover } from "../panels/Popover.tsx";
import { asOnTheHandle } from "../panels/segments.ts";
import { positionTitle } from "../words/condition.ts";
import { springWords } from "./tableWords.ts";
import type { Ask } from "./useAsk.ts";

interface Shown {
  readonly part: string;
  readonly control: string;
  readonly positions: Positions;
  readonly index: number;
  readonly isNow: boolean;
  readonly ask: Ask;
}

/** What a position does when let go, as a choice, and what else can be done with its row. */
export function PositionActs({ part, control, positions, index, isNow, ask }: Shown) {
  const change = (next: Positions) => ask((bench) => changePositions(bench, part, control, next));
  const position = positions[index]!;
  const rest = positions[0]!.name;
  const latching = positions.filter(({ springsBackTo, name }) => springsBackTo === undefined && name !== position.name);
  return (
    <span className="chart-springs caption">
      {index === 0 ? (
        <span>rest, stays</span>
      ) : (
        <select
          aria-label={`${positionTitle(position.name)}, when let go`}
          value={position.springsBackTo ?? ""}
          onChange={({ target }) =>
            change(positionSprings(positions, index, target.value === "" ? null : target.value))
          }
        >
          <option value="">stays</option>
          {latching.map(({ name }) => (
            <option key={name} value={name}>
              {springWords({ ...position, springsBackTo: name }, rest)}
            </option>
          ))}
        </select>
      )}
      {isNow && <b>now</b>}
      {positions.length > 1 && (
        <Popover
          label={`${positionTitle(position.name)}: order and removal`}
          className="icon-button is-tiny"
          place="below"
          button={<Icon name="more" size={16} />}
        >
          {(close) => (
            <ul className="menu">
              {actsOn(positions, index).map(([words, next]) => (
                <li key={words}>
                  <button
                    type="button"
                    className="menu-item"
                    onClick={() => {
                      close();
                      change(next);
                    }}
                  >
                    {words}
                  </button>
                </li>
              ))}
            </ul>
          )}
        </Popover>
      )}
    </span>
  );
}

/** Where a row can go, in the order in which rows are shown: a handle that springs both ways has its rest in the middle. */
function actsOn(positions: Positions, index: number): readonly (readonly [string, Positions])[] {
  const acts: (readonly [string, Positions])[] = [];
  const isHandle = asOnTheHandle(positions) !== positions;
  const isUp = isHandle ? index === 1 : index > 1;
  const isDown = isHandle ? index === 2 : index > 0 && index < positions.length - 1;
  if (index > 0) acts.push(["Make it the rest position", positionMoved(positions, index, 0)]);
  if (isUp) acts.push(["Move up", positionMoved(positions, index, isHandle ? 2 : index - 1)]);
  if (isDown) acts.push(["Move down", positionMoved(positions, index, isHandle ? 1 : index + 1)]);
  return [...acts, ["Remove", positionRemoved(positions, index)]];
}
