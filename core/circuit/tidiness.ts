import { remember } from "../base/memo.ts";
import type { GridUnits } from "../base/units.ts";
import type { Spot } from "../drawing/mark.ts";
import { pathLength } from "../drawing/path.ts";
import type { Circuit } from "./circuit.ts";
import { routed } from "./sheetLayout.ts";
import { setUpSheet } from "./sheetSetup.ts";

/** How easily a page is read, in figures: the fewer, the better. */
export interface Tidiness {
  /** Wires between two parts of the page that find no way and are drawn as two loose ends. */
  readonly broken: number;
  /** Places where a wire crosses another. */
  readonly crossings: number;
  /** Corners of all wires; what two wires of one terminal share counts for each. */
  readonly bends: number;
  /** Length of all wires together. */
  readonly length: GridUnits;
}

/** A wire as it is drawn: its corners from terminal to terminal, and the terminals, by any names that tell them apart. */
export interface DrawnWire {
  readonly corners: readonly Spot[];
  readonly ends: readonly [string, string];
}

/** The figures of a page as its wires are laid now. All are 0 for a page that is not there. */
export function tidinessOf(circuit: Circuit, page: string): Tidiness {
  const known = byPage(circuit).get(page);
  if (known) return known;
  const made = measured(circuit, page);
  byPage(circuit).set(page, made);
  return made;
}

const byPage = remember((_circuit: Circuit) => new Map<string, Tidiness>());

function measured(circuit: Circuit, id: string): Tidiness {
  const page = circuit.pages.find((each) => each.id === id);
  if (!page) return { broken: 0, crossings: 0, bends: 0, length: 0 };
  const setup = setUpSheet({ circuit, page: id }, page);
  const { routes } = routed(setup);
  const inside = setup.wires.filter(({ ends: [from, to] }) => from && to);
  const drawn = inside.flatMap(({ wire }): readonly DrawnWire[] => {
    const corners = routes.get(wire.id);
    return corners && corners.length > 1 ? [{ corners, ends: [wire.from, wire.to] }] : [];
  });
  const bars = setup.parts.flatMap(({ shape }) => (shape.bar ? [shape.bar] : []));
  const figures = tidinessOfWires(drawn);
  const crossings = figures.crossings + bars.reduce((sum, bar) => sum + crossingsOfBar(bar, drawn), 0);
  return { broken: inside.length - drawn.length, ...figures, crossings };
}

/** Wires that pass across the long line of a symbol, which reads as a wire does. */
function crossingsOfBar(bar: readonly [Spot, Spot], wires: readonly DrawnWire[]): number {
  const own: DrawnWire = { corners: bar, ends: ["", ""] };
  return wires.reduce((sum, wire) => sum + crossingsOf(own, wire), 0);
}

/** The figures of wires as they lie. */
export function tidinessOfWires(wires: readonly DrawnWire[]): Omit<Tidiness, "broken"> {
  let crossings = 0;
  wires.forEach((one, index) => {
    for (const other of wires.slice(index + 1)) crossings += crossingsOf(one, other);
  });
  const bends = wires.reduce((sum, { corners }) => sum + corners.length - 2, 0);
  return { crossings, bends, length: wires.reduce((sum, { corners }) => sum + pathLength(corners), 0) };
}

/** Below 0 where the first figures are better: fewer broken wires, then fewer crossings and bends, then less wire. */
export function compareTidiness(one: Tidiness, other: Tidiness): number {
  return one.broken - other.broken || sumOf(one) - sumOf(other) || one.length - other.length;
}

/** Crossings and bends together. */
export function sumOf({ crossings, bends }: Tidiness): number {
  return crossings + bends;
}

interface Leg {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

function legsOf({ corners }: DrawnWire): readonly Leg[] {
  return corners.slice(1).map((to, index) => {
    const from = corners[index]!;
    return {
      left: Math.min(from.x, to.x),
      right: Math.max(from.x, to.x),
      top: Math.min(from.y, to.y),
      bottom: Math.max(from.y, to.y),
    };
  });
}

/**
 * Places where one wire passes through the other, and stretches where it lies on it. Wires of one terminal meet there
 * and at a dot, which is no crossing.
 */
function crossingsOf(one: DrawnWire, other: DrawnWire): number {
  const areMates = one.ends.some((end) => other.ends.includes(end));
  let count = 0;
  for (const a of legsOf(one)) {
    for (const b of legsOf(other)) {
      if (passes(a, b) || passes(b, a)) count += 1;
      else if (!areMates && lieTogether(a, b)) count += 1;
    }
  }
  return count;
}

/** A level leg and an upright one that cross between their ends. */
function passes(level: Leg, upright: Leg): boolean {
  if (level.top !== level.bottom || upright.left !== upright.right) return false;
  const { left: x } = upright;
  const { top: y } = level;
  return level.left < x && x < level.right && upright.top < y && y < upright.bottom;
}

/** Two legs of one direction that share more than a point. */
function lieTogether(a: Leg, b: Leg): boolean {
  const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  const areLevel = a.top === a.bottom && b.top === b.bottom;
  const areUpright = a.left === a.right && b.left === b.right;
  return (areLevel && down === 0 && across > 0) || (areUpright && across === 0 && down > 0);
}
