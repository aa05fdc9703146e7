import { changePins, type Pins } from "../../core/edit/commands/changePins.ts";
import { changeTerminals } from "../../core/edit/commands/changeTerminals.ts";
import type { Part, PinRole } from "../../core/parts/kind.ts";
import type { Command } from "../state/action.ts";
import { inTurn } from "./inTurn.ts";

/** The pins of a module in order, each with what it is. */
type Roles = ReadonlyMap<string, PinRole>;

/** Says what one pin of a module is. */
export function roleChanged(part: Part, roles: Roles, pin: string, role: PinRole): Command {
  return (bench) => changePins(bench, part.id, asPins(new Map(roles).set(pin, role)));
}

/**
 * The pins of a module under other names, in order: one that another takes the place of is renamed with its wires, one that
 * goes takes them along, a new one is not known. Names go by the list of terminals, since the record of pins keeps no order
 * for numbers.
 */
export function pinsNamed(part: Part, roles: Roles, names: readonly string[]): Command {
  const named: Command = (bench) => changeTerminals(bench, part.id, names);
  // What the pins of a new module are is not written yet, and would not follow their names.
  return part.pins ? named : inTurn((bench) => changePins(bench, part.id, asPins(roles)), named);
}

function asPins(roles: Roles): Pins {
  return Object.fromEntries(roles);
}
