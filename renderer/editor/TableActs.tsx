import type { ReactNode } from "react";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { terminalPoint, terminalsOf, wireSideOf } from "../../core/circuit/points.ts";
import { wiresAt } from "../../core/diagnose/testPoint.ts";
import { changePositions } from "../../core/edit/commands/changePositions.ts";
import { changeTerminals } from "../../core/edit/commands/changeTerminals.ts";
import { positionAdded } from "../../core/edit/positionTable.ts";
import type { Control, Part } from "../../core/parts/kind.ts";
import { Icon } from "../panels/Icon.tsx";
import { counted } from "../words/figures.ts";
import { freshNumber, freshPosition } from "./tableWords.ts";
import type { Ask } from "./useAsk.ts";

interface Shown {
  readonly circuit: Circuit;
  readonly part: Part;
  readonly control: Control;
  /** Terminal that is chosen in the table. */
  readonly chosen: string | null;
  readonly ask: Ask;
  /** Tells the table what was added, so that its name can be typed at once. */
  readonly onFresh: (name: string) => void;
  /** What else stands in the row. */
  readonly children: ReactNode;
}

/** A position more, a terminal more, and the chosen terminal less. */
export function TableActs({ circuit, part, control, chosen, ask, onFresh, children }: Shown) {
  const terminals = terminalsOf(circuit, part);
  const { positions } = control;
  const addPosition = (): void => {
    const name = freshPosition(positions);
    onFresh(name);
    ask((bench) => changePositions(bench, part.id, control.name, positionAdded(positions, name)));
  };
  const addTerminal = (): void => {
    const name = freshNumber(terminals);
    onFresh(name);
    ask((bench) => changeTerminals(bench, part.id, [...terminals, name]));
  };
  const removeTerminal = (): void => {
    ask((bench) =>
      changeTerminals(
        bench,
        part.id,
        terminals.filter((each) => each !== chosen),
      ),
    );
  };
  return (
    <div className="chart-acts">
      <button type="button" className="button" onClick={addPosition}>
        <Icon name="add" />
        Position
      </button>
      <button type="button" className="button" onClick={addTerminal}>
        <Icon name="add" />
        Terminal
      </button>
      {children}
      {chosen !== null && terminals.length > 1 && (
        <button type="button" className="button is-quiet" onClick={removeTerminal}>
          Remove terminal {chosen}
          {withWires(circuit, part, chosen)}
        </button>
      )}
    </div>
  );
}

/** A terminal that goes takes its wires along. */
function withWires(circuit: Circuit, part: Part, terminal: string): string {
  const count = wiresAt(circuit, wireSideOf(circuit, terminalPoint(part, terminal))).length;
  return count === 0 ? "" : ` and ${counted(count, "wire")}`;
}
