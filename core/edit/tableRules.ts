import { type Refusal, refuse } from "../base/outcome.ts";
import type { Part, Position } from "../parts/kind.ts";

/** Most positions of a control, joins of one position, and characters of a name, as a circuit file takes them. */
const MOST_POSITIONS = 60;
const MOST_JOINS = 400;
const MOST_NAME = 40;
/** Positions as printed on the switch. */
const POSITION = /^[^\s,:=@](?:[^\n,:=@]*[^\s,:=@])?$/u;

/** A control has a name in conditions, `S2.middle`; no dot, since that parts it from the part. */
const CONTROL = /^\p{L}[\p{L}\p{N}_/-]{0,39}$/u;

/** The refusal `control-spelling` of what cannot name a control, else null. */
export function controlNameRefusal(name: string): Refusal | null {
  return CONTROL.test(name) && !(name in Object.prototype)
    ? null
    : refuse("control-spelling", { control: name }).refusal;
}

/**
 * What is wrong with a table of positions: `positions-count`, `position-spelling`, `twice`, a join to no terminal or to
 * itself, `rest-springs-back`, `position-unknown`, and `springs-onto-spring` where a position springs back to one that does
 * not latch. Null where nothing is.
 */
export function positionsRefusal(
  part: Part,
  positions: readonly Position[],
  terminals: readonly string[],
): Refusal | null {
  if (positions.length === 0 || positions.length > MOST_POSITIONS) {
    return refuse("positions-count", { part: part.id, most: MOST_POSITIONS }).refusal;
  }
  const names = positions.map(({ name }) => name);
  for (const [index, { name, joins, springsBackTo: back }] of positions.entries()) {
    const about = { part: part.id, position: name };
    if (!POSITION.test(name) || name.length > MOST_NAME || name in Object.prototype) {
      return refuse("position-spelling", { ...about, most: MOST_NAME }).refusal;
    }
    if (names.indexOf(name) !== index) return refuse("twice", { what: "position", id: name }).refusal;
    const wrong = joinsRefusal(part, joins, terminals);
    if (wrong) return wrong;
    if (back === undefined) continue;
    if (index === 0) return refuse("rest-springs-back", about).refusal;
    const goal = positions.find((position) => position.name === back);
    if (!goal || back === name) return refuse("position-unknown", { part: part.id, position: back }).refusal;
    if (goal.springsBackTo !== undefined) return refuse("springs-onto-spring", { ...about, back }).refusal;
  }
  return null;
}

/** What is wrong with joins of a part: `joins-many`, `point-terminal` or `join-itself`; null where nothing is. */
export function joinsRefusal(part: Part, joins: Position["joins"], terminals: readonly string[]): Refusal | null {
  if (joins.length > MOST_JOINS) return refuse("joins-many", { most: MOST_JOINS }).refusal;
  for (const [a, b] of joins) {
    const wrong = terminalRefusal(part, a, terminals) ?? terminalRefusal(part, b, terminals);
    if (wrong) return wrong;
    if (a === b) return refuse("join-itself", { part: part.id, terminal: a }).refusal;
  }
  return null;
}

/** The refusal `point-terminal` where a part has no such terminal, else null. */
export function terminalRefusal(part: Part, terminal: string, terminals: readonly string[]): Refusal | null {
  if (terminals.includes(terminal)) return null;
  return refuse("point-terminal", { part: part.id, terminal, terminals: terminals.join(", ") }).refusal;
}
