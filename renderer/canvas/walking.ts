import type { PointId } from "../../core/base/ids.ts";
import { wireSideOf } from "../../core/circuit/points.ts";
import { stepsFrom } from "../../core/live/walk.ts";
import type { Thing } from "../state/state.ts";
import type { Shown } from "./shown.ts";
import type { Standing, StandingPart } from "./standing.ts";

/** Which way an arrow goes: towards the return, towards the feed, or to a neighbour at a branching. */
export type Way = "onward" | "back" | "next" | "previous";

/** Where an arrow leads from what is chosen; null where it leads nowhere. */
export function walked(
  { circuit, live, selection }: Pick<Shown, "circuit" | "live" | "selection">,
  way: Way,
): Thing | null {
  if (selection?.is === "wire") {
    const wire = circuit.wires.find(({ id }) => id === selection.id);
    if (!wire || way === "next" || way === "previous") return null;
    const [from, to] = [wire.from, wire.to].map((point) => wireSideOf(circuit, point));
    const isAlong = stepsFrom(circuit, live, from!).onward.includes(to!);
    return { is: "point", id: (way === "onward") === isAlong ? to! : from! };
  }
  if (selection?.is !== "point") return null;
  const steps = stepsFrom(circuit, live, selection.id);
  if (way === "onward" || way === "back") {
    const next = steps[way][0];
    return next === undefined ? null : { is: "point", id: next };
  }
  const at = steps.beside.indexOf(wireSideOf(circuit, selection.id));
  const count = steps.beside.length;
  if (at < 0 || count < 2) return null;
  return { is: "point", id: steps.beside[(at + (way === "next" ? 1 : count - 1)) % count]! };
}

/** Height of the rows in which parts are read from left to right, grid units. */
const ROW = 8;

/** The parts of a page in the order one reads them: row by row, each from the left. */
export function readingOrder({ parts }: Standing): readonly StandingPart[] {
  const row = ({ box }: StandingPart): number => Math.floor(box.top / ROW);
  return [...parts.values()].sort((one, other) => row(one) - row(other) || one.box.left - other.box.left);
}

/** The first point of a part; of the first part of the page where none is named. */
export function firstPoint(standing: Standing, part?: string): PointId | null {
  const of = part ?? readingOrder(standing)[0]?.part.id;
  for (const [point, spot] of standing.points) if (spot.part === of) return point;
  return null;
}

/** The part after or before the one that is chosen, round and round. */
export function nextPart(standing: Standing, selection: Thing | null, way: "next" | "previous"): string | null {
  const order = readingOrder(standing).map(({ part }) => part.id);
  if (order.length === 0) return null;
  const of = selection?.is === "point" ? standing.spots.get(selection.id)?.part : selection?.id;
  const at = of === undefined ? -1 : order.indexOf(of);
  if (at < 0) return order[way === "next" ? 0 : order.length - 1]!;
  return order[(at + (way === "next" ? 1 : order.length - 1)) % order.length]!;
}
