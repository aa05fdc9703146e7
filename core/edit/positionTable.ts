import type { Position } from "../parts/kind.ts";

/** The positions of one control, rest first, with the pairs of terminals that each joins. */
export type Positions = readonly Position[];

type Pair = Position["joins"][number];

/** Whether a pair joins these two terminals, whichever way round. */
function isBetween([one, other]: Pair, a: string, b: string): boolean {
  return (one === a && other === b) || (one === b && other === a);
}

/**
 * The table with two terminals joined in a position, or parted where they were. The pair is spelled as it is elsewhere in
 * the table, so that it stays one contact. Positions count from 0.
 */
export function joinToggled(positions: Positions, index: number, a: string, b: string): Positions {
  const known = positions.flatMap(({ joins }) => joins).find((pair) => isBetween(pair, a, b));
  return at(positions, index, (position) => {
    const others = position.joins.filter((pair) => !isBetween(pair, a, b));
    const isJoined = others.length < position.joins.length;
    return { ...position, joins: isJoined ? others : [...position.joins, known ?? [a, b]] };
  });
}

/** The table with a position under another name; what springs back to it follows. */
export function positionRenamed(positions: Positions, index: number, name: string): Positions {
  const was = positions[index]?.name;
  if (was === undefined) return positions;
  return positions.map((position, place) => ({
    ...position,
    ...(place === index && { name }),
    ...(position.springsBackTo === was && { springsBackTo: name }),
  }));
}

/** The table with a new position that joins nothing, after all others unless a place is said. */
export function positionAdded(positions: Positions, name: string, place = positions.length): Positions {
  return restLatching([...positions.slice(0, place), { name, joins: [] }, ...positions.slice(place)]);
}

/** The table without a position; what sprang back to it springs back to rest. */
export function positionRemoved(positions: Positions, index: number): Positions {
  const gone = positions[index]?.name;
  const left = positions.filter((_, place) => place !== index);
  const rest = left[0]?.name;
  return restLatching(
    left.map((position) =>
      position.springsBackTo === gone && rest !== undefined ? { ...position, springsBackTo: rest } : position,
    ),
  );
}

/** The table with a position at another place; the first is rest, and latches. */
export function positionMoved(positions: Positions, from: number, to: number): Positions {
  const moved = positions[from];
  if (!moved) return positions;
  const others = positions.filter((_, place) => place !== from);
  return restLatching([...others.slice(0, to), moved, ...others.slice(to)]);
}

/** The table with a position that springs back to another when let go, or latches for null. */
export function positionSprings(positions: Positions, index: number, back: string | null): Positions {
  return at(positions, index, (position) =>
    back === null ? latching(position) : { ...position, springsBackTo: back },
  );
}

function at(positions: Positions, index: number, change: (position: Position) => Position): Positions {
  return positions.map((position, place) => (place === index ? change(position) : position));
}

function latching({ name, joins }: Position): Position {
  return { name, joins };
}

function restLatching(positions: Positions): Positions {
  return at(positions, 0, (position) => (position.springsBackTo === undefined ? position : latching(position)));
}
