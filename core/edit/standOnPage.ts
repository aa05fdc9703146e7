import type { PartId, PointId } from "../base/ids.ts";
import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { GridUnits } from "../base/units.ts";
import type { Circuit, PartPlace } from "../circuit/circuit.ts";
import { type PlacedShape, placeSymbol } from "../circuit/placeSymbol.ts";
import { isInLine, terminalPoint, wireSideOf } from "../circuit/points.ts";
import { restPose } from "../circuit/sheetPose.ts";
import { gridUnitsOf } from "../drawing/scale.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { Part } from "../parts/kind.ts";
import { viewOf } from "../parts/view.ts";
import type { Change } from "./change.ts";

/** A part and where it stands, or the refusal `part-unknown` or `not-placed`. */
export function placeOf(circuit: Circuit, id: PartId): Outcome<{ readonly part: Part; readonly place: PartPlace }> {
  const part = circuit.parts.find((candidate) => candidate.id === id);
  if (!part) return refuse("part-unknown", { part: id });
  const place = circuit.placement.parts[id];
  return place ? ok({ part, place }) : refuse("not-placed", { part: id });
}

/** The symbol of a part as it would stand in a place, at rest. */
export function shapeAt(circuit: Circuit, part: Part, place: PartPlace): PlacedShape {
  const kind = kindOf(part.kind)!;
  const view = viewOf(kind, part, circuit.nominalVolts);
  return placeSymbol(kind.symbol(view, restPose(kind, view), "iec"), place);
}

/** The change that puts a part in a place. Refuses `page-unknown`, and `off-the-page` where it would not lie on it whole. */
export function placing(circuit: Circuit, part: Part, place: PartPlace): Outcome<Change> {
  const page = circuit.pages.find(({ id }) => id === place.page);
  if (!page) return refuse("page-unknown", { page: place.page });
  const { left, top, right, bottom } = shapeAt(circuit, part, place).outline;
  const isOn = left >= 0 && top >= 0 && right <= gridUnitsOf(page.widthMm) && bottom <= gridUnitsOf(page.heightMm);
  if (!isOn) return refuse("off-the-page", { part: part.id, page: page.id });
  return ok({ change: "entry", record: "places", key: part.id, value: place });
}

// ---------------------------------------------------------------- bends of its wires

type Bends = readonly (readonly [GridUnits, GridUnits])[];

/** Bends that a person set on the wires of a part, when it moves on its page: its own legs follow, far bends stay. */
export function bendsFollowing(circuit: Circuit, part: Part, from: PartPlace, to: PartPlace): readonly Change[] {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const wired = wiresWithBends(circuit, part);
  if (wired.length === 0) return [];
  const { terminals } = shapeAt(circuit, part, from);
  const spots = new Map(
    Object.entries(terminals).map(([name, { x, y }]) => [
      wireSideOf(circuit, terminalPoint(part, name)),
      [x, y] as const,
    ]),
  );
  return wired.flatMap(({ id, ends: [one, other], bends }): readonly Change[] => {
    const start = spots.get(one);
    const end = spots.get(other);
    let moved = bends;
    if (start && end) moved = bends.map(([x, y]) => [x + dx, y + dy]);
    else if (start) moved = legFollowing(bends, start, dx, dy);
    else if (end) moved = backwards(legFollowing(backwards(bends), end, dx, dy));
    return moved === bends ? [] : [{ change: "entry", record: "bends", key: id, value: moved }];
  });
}

function backwards(bends: Bends): Bends {
  return [...bends].reverse();
}

/** The bends on the straight leg that leaves a terminal keep in line with it; the rest stay where they are. */
function legFollowing(bends: Bends, [x, y]: readonly [GridUnits, GridUnits], dx: GridUnits, dy: GridUnits): Bends {
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

/** Bends set on the wires of a part are dropped: turned or on another page, its wires are laid anew. */
export function bendsDropped(circuit: Circuit, part: Part): readonly Change[] {
  return wiresWithBends(circuit, part).map(({ id }) => ({ change: "entry", record: "bends", key: id }));
}

interface Bent {
  readonly id: string;
  readonly ends: readonly [PointId, PointId];
  readonly bends: Bends;
}

function wiresWithBends({ wires, placement, connectors }: Circuit, part: Part): readonly Bent[] {
  const own = `${part.id}${isInLine(part) ? "-" : "."}`;
  const carried = new Set(
    connectors.flatMap(({ id, cavities }) =>
      Object.entries(cavities ?? {}).flatMap(([cavity, carries]) =>
        carries.startsWith(own) ? [`${id}-${cavity}`] : [],
      ),
    ),
  );
  const isOwn = (end: PointId): boolean => end.startsWith(own) || carried.has(end);
  return wires.flatMap(({ id, from, to }) => {
    const bends = placement.wires[id];
    return bends && bends.length > 0 && (isOwn(from) || isOwn(to)) ? [{ id, ends: [from, to] as const, bends }] : [];
  });
}
