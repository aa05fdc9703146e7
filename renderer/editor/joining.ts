import { joinToggled, type Positions } from "../../core/edit/positionTable.ts";
import type { Position } from "../../core/parts/kind.ts";

type Joins = Position["joins"];

/** Terminals that hang together by these pairs, each group and its members in the order given; lone ones are left out. */
export function groupsOf(joins: Joins, order: readonly string[]): readonly (readonly string[])[] {
  const groups: (readonly string[])[] = [];
  const seen = new Set<string>();
  for (const terminal of order) {
    if (seen.has(terminal)) continue;
    const reached = reachedFrom(terminal, joins);
    for (const each of reached) seen.add(each);
    if (reached.size > 1) groups.push(order.filter((each) => reached.has(each)));
  }
  return groups;
}

/** Whether a pair or a chain of pairs joins two terminals. */
export function isJoined(joins: Joins, one: string, other: string): boolean {
  return reachedFrom(one, joins).has(other);
}

/**
 * The table after two terminals of a position were chosen: joined where they were apart, parted where they hung together.
 * Where only a third joins them, or it does so too, the second leaves; what is between others stays. Positions count from 0.
 */
export function joinedOrParted(positions: Positions, index: number, one: string, other: string): Positions {
  const joins = positions[index]?.joins ?? [];
  if (!isJoined(joins, one, other)) return joinToggled(positions, index, one, other);
  const apart = joins.filter((pair) => !(pair.includes(one) && pair.includes(other)));
  const without = apart.filter((pair) => !pair.includes(other));
  const left = apart.filter((pair) => !pair.includes(other) || !isJoined(without, one, farEnd(pair, other)));
  return positions.map((position, place) => (place === index ? { ...position, joins: left } : position));
}

function farEnd([a, b]: Joins[number], terminal: string): string {
  return a === terminal ? b : a;
}

function reachedFrom(terminal: string, joins: Joins): ReadonlySet<string> {
  const reached = new Set([terminal]);
  // A set that grows while it is walked is walked to its new end.
  for (const each of reached) for (const pair of joins) if (pair.includes(each)) reached.add(farEnd(pair, each));
  return reached;
}
