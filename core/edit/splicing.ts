import type { PointId } from "../base/ids.ts";
import { type Outcome, ok } from "../base/outcome.ts";
import type { Circuit, PartPlace } from "../circuit/circuit.ts";
import { terminalPoint, terminalsOf } from "../circuit/points.ts";
import type { Spot } from "../drawing/mark.ts";
import type { Part, Side } from "../parts/kind.ts";
import type { Change } from "./change.ts";
import { placing, shapeAt } from "./standOnPage.ts";

/** A splice of three legs has its dot in the middle of a square of this half size, in grid units. */
const HALF = 2;
const TURNS = [0, 90, 180, 270] as const;
const AWAY: Readonly<Record<Side, Spot>> = {
  left: { x: -1, y: 0 },
  right: { x: 1, y: 0 },
  up: { x: 0, y: -1 },
  down: { x: 0, y: 1 },
};
/** A leg that points off the way of a half of the wire costs more than one off the way of the wire that is added. */
const HALF_WEIGHT = 4;

/** Where a splice of three stands, and its legs for the wire behind the cut, the wire ahead of it, and the new one. */
export interface SplicePlace {
  readonly place: PartPlace;
  readonly legs: readonly [string, string, string];
}

/** The turn of a new splice with its dot on this spot, and its legs, so that each looks where its wire comes from. */
export function splicePlace(
  circuit: Circuit,
  splice: Part,
  page: string,
  { spot, back, ahead, other }: { readonly [K in "spot" | "back" | "ahead" | "other"]: Spot },
): SplicePlace {
  const corner = { page, x: Math.round(spot.x) - HALF, y: Math.round(spot.y) - HALF };
  let best: SplicePlace & { readonly cost: number } = {
    place: corner,
    legs: ["1", "2", "3"],
    cost: Number.POSITIVE_INFINITY,
  };
  for (const turn of TURNS) {
    const place: PartPlace = { ...corner, ...(turn !== 0 && { turn }) };
    const { terminals } = shapeAt(circuit, splice, place);
    for (const legs of orders(Object.keys(terminals))) {
      const [one, two, three] = legs.map((leg) => terminals[leg]!.side) as [Side, Side, Side];
      const cost =
        HALF_WEIGHT * (offTheWay(one, spot, back) + offTheWay(two, spot, ahead)) + offTheWay(three, spot, other);
      if (cost < best.cost - 1e-9) best = { place, legs, cost };
    }
  }
  return { place: best.place, legs: best.legs };
}

/** 0 where the side looks straight at the spot from here, 2 where it looks away from it. */
function offTheWay(side: Side, here: Spot, spot: Spot): number {
  const [dx, dy] = [spot.x - here.x, spot.y - here.y];
  const far = Math.hypot(dx, dy);
  return far === 0 ? 1 : 1 - (AWAY[side].x * dx + AWAY[side].y * dy) / far;
}

function orders(names: readonly string[]): readonly (readonly [string, string, string])[] {
  return names.flatMap((one) =>
    names.flatMap((two) =>
      names.flatMap((three) => (new Set([one, two, three]).size === 3 ? [[one, two, three] as const] : [])),
    ),
  );
}

/**
 * A leg of a splice for one more wire, and the changes that make it: one that is free, else a new one before the last, so
 * that every other leg keeps its name and its side. Refuses `off-the-page` where the splice would outgrow its page.
 */
export function freeLeg(
  circuit: Circuit,
  splice: Part,
): Outcome<{ readonly point: PointId; readonly changes: readonly Change[] }> {
  const legs = terminalsOf(circuit, splice);
  const wired = new Set(circuit.wires.flatMap(({ from, to }) => [from, to]));
  const free = legs.find((leg) => !wired.has(terminalPoint(splice, leg)));
  if (free !== undefined) return ok({ point: terminalPoint(splice, free), changes: [] });
  const added = String(Math.max(0, ...legs.filter((leg) => /^\d{1,4}$/.test(leg)).map(Number)) + 1);
  const terminals = [...legs.slice(0, -1), added, legs.at(-1)!];
  const next: Part = { ...splice, terminals };
  const place = circuit.placement.parts[splice.id];
  const placed = place ? placing(circuit, next, place) : null;
  if (placed && !placed.ok) return placed;
  const changes: readonly Change[] = [
    { change: "item", list: "parts", id: splice.id, field: "terminals", value: terminals },
    ...(place ? bendsOffMovedLegs(circuit, splice, next, place) : []),
  ];
  return ok({ point: terminalPoint(splice, added), changes });
}

/** With a further leg a splice may take another shape: bends of wires whose legs have moved are dropped. */
function bendsOffMovedLegs(circuit: Circuit, splice: Part, next: Part, place: PartPlace): readonly Change[] {
  const [before, after] = [shapeAt(circuit, splice, place).terminals, shapeAt(circuit, next, place).terminals];
  const moved = Object.entries(before).flatMap(([leg, { x, y }]) =>
    after[leg]?.x === x && after[leg].y === y ? [] : [terminalPoint(splice, leg)],
  );
  return circuit.wires
    .filter(
      ({ id, from, to }) => Object.hasOwn(circuit.placement.wires, id) && [from, to].some((end) => moved.includes(end)),
    )
    .map(({ id }) => ({ change: "entry", record: "bends", key: id }));
}
