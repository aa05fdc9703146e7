import type { PartId, PointId, WireId } from "../base/ids.ts";
import type { GridUnits } from "../base/units.ts";
import type { Circuit, PartPlace } from "../circuit/circuit.ts";
import { terminalPoint, wireSideOf } from "../circuit/points.ts";
import type { Part } from "../parts/kind.ts";
import type { Change } from "./change.ts";
import { shapeAt } from "./standOnPage.ts";

type Bends = Circuit["placement"]["wires"][WireId];

/** A part that goes from one place to another on the same page. */
export interface Move {
  readonly part: Part;
  readonly from: PartPlace;
  readonly to: PartPlace;
}

/** A wire with bends, and which of its ends lie on the parts that were asked for. */
interface Bent {
  readonly id: WireId;
  readonly ends: readonly [PointId, PointId];
  readonly isOwn: readonly [boolean, boolean];
  readonly bends: Bends;
}

/** Bends of the wires of parts that move: a wire between two that move alike goes along whole, else its own legs follow. */
export function bendsFollowing(circuit: Circuit, moves: readonly Move[]): readonly Change[] {
  const bent = bentWires(
    circuit,
    moves.map(({ part }) => part.id),
  );
  if (bent.length === 0) return [];
  const starts = new Map(moves.flatMap((move) => startsOf(circuit, move)));
  return bent.flatMap(({ id, ends, bends }): readonly Change[] => {
    const [start, end] = [starts.get(ends[0]), starts.get(ends[1])];
    const moved =
      start && end && start.dx === end.dx && start.dy === end.dy
        ? bends.map(([x, y]) => [x + start.dx, y + start.dy] as const)
        : backwards(legFollowing(backwards(legFollowing(bends, start)), end));
    return areSame(moved, bends) ? [] : [{ change: "entry", record: "bends", key: id, value: moved }];
  });
}

/** Bends of the wires of parts that are turned or flipped as one: those between them go along, the others are dropped. */
export function bendsAlong(
  circuit: Circuit,
  parts: readonly PartId[],
  along: (x: GridUnits, y: GridUnits) => readonly [GridUnits, GridUnits],
): readonly Change[] {
  return bentWires(circuit, parts).map(({ id, isOwn, bends }) => {
    const entry = { change: "entry", record: "bends", key: id } as const;
    return isOwn[0] && isOwn[1] ? { ...entry, value: bends.map(([x, y]) => along(x, y)) } : entry;
  });
}

/** Bends set on the wires of a part are dropped: turned or on another page, its wires are laid anew. */
export function bendsDropped(circuit: Circuit, part: Part): readonly Change[] {
  return bentWires(circuit, [part.id]).map(({ id }) => ({ change: "entry", record: "bends", key: id }));
}

// ---------------------------------------------------------------- wires and their ends

/** Looks without the index of points, which a drag would build anew at every step. */
function bentWires({ wires, placement, connectors }: Circuit, parts: readonly PartId[]): readonly Bent[] {
  const ids = new Set(parts);
  const carried = new Set(
    connectors.flatMap(({ id, cavities }) =>
      Object.entries(cavities ?? {}).flatMap(([cavity, carries]) =>
        ids.has(ownerOf(carries)) ? [`${id}-${cavity}`] : [],
      ),
    ),
  );
  const isOwn = (end: PointId): boolean => ids.has(ownerOf(end)) || carried.has(end);
  return wires.flatMap(({ id, from, to }) => {
    const bends = placement.wires[id];
    if (!bends || bends.length === 0 || !(isOwn(from) || isOwn(to))) return [];
    return [{ id, ends: [from, to] as const, isOwn: [isOwn(from), isOwn(to)] as const, bends }];
  });
}

/** The part or connector that a point belongs to, by its spelling. */
function ownerOf(point: PointId): string {
  return point.split(/[.-]/, 1)[0]!;
}

/** A terminal of a part that moves: where it was, and how far it goes. */
interface Start {
  readonly x: GridUnits;
  readonly y: GridUnits;
  readonly dx: GridUnits;
  readonly dy: GridUnits;
}

function startsOf(circuit: Circuit, { part, from, to }: Move): readonly (readonly [PointId, Start])[] {
  const { terminals } = shapeAt(circuit, part, from);
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  return Object.entries(terminals).map(([name, { x, y }]) => [
    wireSideOf(circuit, terminalPoint(part, name)),
    { x, y, dx, dy },
  ]);
}

// ---------------------------------------------------------------- legs

function backwards(bends: Bends): Bends {
  return [...bends].reverse();
}

/** The bends on the straight leg that leaves a terminal keep in line with it; the rest stay where they are. */
function legFollowing(bends: Bends, start: Start | undefined): Bends {
  if (!start) return bends;
  const { x, y, dx, dy } = start;
  const upright = leading(bends, (bend) => bend[0] === x);
  const level = leading(bends, (bend) => bend[1] === y);
  if (upright > 0 && level === 0) return bends.map((bend, index) => (index < upright ? [bend[0] + dx, bend[1]] : bend));
  if (level > 0 && upright === 0) return bends.map((bend, index) => (index < level ? [bend[0], bend[1] + dy] : bend));
  return bends;
}

/** How many bends hold from the first on. */
function leading(bends: Bends, holds: (bend: Bends[number]) => boolean): number {
  const first = bends.findIndex((bend) => !holds(bend));
  return first < 0 ? bends.length : first;
}

function areSame(one: Bends, other: Bends): boolean {
  return one.every(([x, y], index) => x === other[index]![0] && y === other[index]![1]);
}
