import type { Circuit } from "../../core/circuit/circuit.ts";
import { isInLine, terminalPoint, terminalsOf, wireSideOf } from "../../core/circuit/points.ts";
import { addConnector } from "../../core/edit/commands/addConnector.ts";
import { fillCavity } from "../../core/edit/commands/fillCavity.ts";
import { kindOf } from "../../core/parts/catalogue.ts";
import type { Part } from "../../core/parts/kind.ts";
import type { Command } from "../state/action.ts";
import { firstRows } from "./faceRows.ts";
import { inTurn } from "./inTurn.ts";

/** Whether a part can sit in a connector: what only joins has studs and legs, and a joint has its own face. */
export function takesPlug(part: Part): boolean {
  const role = kindOf(part.kind)?.role;
  return isInLine(part) || (role !== undefined && role !== "join");
}

/** Terminals of a part that no cavity carries. */
export function looseTerminals(circuit: Circuit, part: Part): readonly string[] {
  return terminalsOf(circuit, part).filter((terminal) => {
    const point = terminalPoint(part, terminal);
    return wireSideOf(circuit, point) === point;
  });
}

/** A new connector with a place for each terminal that has none, and the terminals in it; wires go over to the places. */
export function plugAdded(circuit: Circuit, part: Part): Command {
  if (isInLine(part)) {
    const places = [...new Set(terminalsOf(circuit, part).map((terminal) => terminal.slice(0, -1)))];
    return (bench) => addConnector(bench, { id: part.id, rows: [places] });
  }
  const loose = looseTerminals(circuit, part);
  const rows = firstRows(loose);
  const names = rows.flat();
  const fills = loose.map(
    (terminal, index): Command =>
      (bench) => {
        const id = bench.circuit.connectors.at(-1)!.id;
        const place = names.includes(terminal) ? terminal : names[index]!;
        return fillCavity(bench, id, place, terminalPoint(part, terminal));
      },
  );
  return inTurn((bench) => addConnector(bench, { rows }), ...fills);
}
