import type { PartId } from "../base/ids.ts";
import type { Amps, Share } from "../base/units.ts";
import type { NodeIndex } from "../solve/element.ts";
import { doingOf } from "./doing.ts";
import type { CircuitNetwork, Placed } from "./network.ts";
import type { Rig } from "./rig.ts";

/** Less than this through an element is no current: a meter's microamps, and noise of solving. */
const LEAST_AMPS: Amps = 2e-6;

/** One element passed in the direction of its current: from one node to another, amps above 0; 0 where none flows. */
export interface Way {
  readonly placed: Placed;
  readonly from: NodeIndex;
  readonly to: NodeIndex;
  readonly amps: Amps;
}

/** The currents of a solved circuit. Nodes that joints make one are one place, by number. */
export interface Currents {
  readonly rig: Rig;
  /** Place of every node. */
  readonly places: Int32Array;
  /** Ways that lead out of a place and into it. */
  out(place: number): readonly Way[];
  into(place: number): readonly Way[];
}

const NONE: readonly Way[] = [];

/** The currents of a rig as it was last solved. */
export function currentsOf(rig: Rig): Currents {
  const places = placesOf(rig.network);
  const out = new Map<number, Way[]>();
  const into = new Map<number, Way[]>();
  rig.network.elements.forEach((placed, index) => {
    if (placed.element.law === "joint" || placed.isMeter || rig.isOpen[index]) return;
    const amps = rig.solver.amps(index);
    if (Math.abs(amps) < LEAST_AMPS) return;
    const { a, b } = placed.element;
    const way = amps > 0 ? { placed, from: a, to: b, amps } : { placed, from: b, to: a, amps: -amps };
    put(out, places[way.from]!, way);
    put(into, places[way.to]!, way);
  });
  return { rig, places, out: (place) => out.get(place) ?? NONE, into: (place) => into.get(place) ?? NONE };
}

function put(lists: Map<number, Way[]>, place: number, way: Way): void {
  const list = lists.get(place);
  if (list) list.push(way);
  else lists.set(place, [way]);
}

function placesOf({ nodeCount, elements }: CircuitNetwork): Int32Array {
  const places = Int32Array.from({ length: nodeCount }, (_, node) => node);
  const top = (node: number): number => {
    let at = node;
    while (places[at] !== at) at = places[at]!;
    return at;
  };
  for (const { element } of elements) {
    if (element.law !== "joint") continue;
    const [one, other] = [top(element.a), top(element.b)];
    places[Math.max(one, other)] = Math.min(one, other);
  }
  return places.map(top);
}

/** Share of what a load does that an element may carry and still be where its current is measured. */
const SAME_AMPS = 1e-6;
/**
 * Elements of a load with less than this share of its greatest current are left out (our own number): a dark filament
 * leaks a little where two lamps share their ground.
 */
const LEAST_SHARE: Share = 0.05;

/**
 * The elements of a part that do its work, most amps first: a motor's winding, both filaments of a lamp, a relay's coil,
 * a flasher's contact. Empty where none carries current.
 */
export function workingWays({ rig, places, out }: Currents, part: PartId): readonly Way[] {
  const placed = rig.network.parts.get(part);
  if (!placed) return NONE;
  const own = [...placed.elements.values()].flatMap((index): readonly Way[] => {
    const { element } = rig.network.elements[index]!;
    return [element.a, element.b].flatMap((node) =>
      out(places[node]!).filter((way) => way.placed.element === element && way.from === node),
    );
  });
  const doing = doingOf(rig, placed);
  const measured = own.filter(({ amps }) => doing && Math.abs(amps - Math.abs(doing.amps)) < SAME_AMPS);
  const loads = (ways: readonly Way[]) => ways.filter((way) => way.placed.passes === "load");
  const chosen = loads(measured).length > 0 ? loads(measured).slice(0, 1) : loads(own);
  const working = chosen.length > 0 && placed.kind.role !== "source" ? chosen : measured.slice(0, 1);
  const most = Math.max(0, ...working.map(({ amps }) => amps));
  return [...working].filter(({ amps }) => amps >= LEAST_SHARE * most).sort((one, other) => other.amps - one.amps);
}
