import type { WireId } from "../base/ids.ts";
import type { Spot } from "../drawing/mark.ts";
import type { Bounds } from "../drawing/measure.ts";
import { cornersOf, nodesAlong, straightened } from "./routeBends.ts";
import { exitOf, goalsAt, type RouteEnd, startsAt } from "./routeEnds.ts";
import { gridOf, nodeAt, openAcross, type RouteGrid, reserve, spotOf } from "./routeGrid.ts";
import { type Found, RouteSearch } from "./routeSearch.ts";
import { runsAlong, Taken, type Way } from "./routeTaken.ts";

/** A wire to be laid. Bends that a person has set are kept as they are. */
export interface RouteWire {
  readonly id: WireId;
  readonly from: RouteEnd;
  readonly to: RouteEnd;
  readonly bends?: readonly (readonly [number, number])[];
}

/** What the wires of a page have to find their way through: bodies to go round, words to keep off where they can. */
export interface RoutePage {
  readonly bounds: Bounds;
  readonly bodies: readonly Bounds[];
  readonly words: readonly Bounds[];
  /** Straight ways across bodies, each as wide as a line. */
  readonly across?: readonly Bounds[];
  readonly wires: readonly RouteWire[];
}

/** How often the dearest wires are taken up and laid anew after all have been laid. */
const ROUNDS = 2;
/** A wire that costs this little beyond its plain length (a bend or two) is not laid anew. */
const GOOD_ENOUGH = 10;

/**
 * Corners of every wire from terminal to terminal, at right angles on the grid of one unit: round bodies, off words,
 * off other wires, with few crossings and bends. Short ones are laid first. A wire that finds no way is not in the map.
 */
export function routeWires(page: RoutePage): ReadonlyMap<WireId, readonly Spot[]> {
  const laying = new Laying(page);
  laying.layAll();
  for (let round = 0; round < ROUNDS; round++) laying.layDearestAnew();
  return laying.corners();
}

const span = (wire: RouteWire): number =>
  Math.abs(wire.from.spot.x - wire.to.spot.x) + Math.abs(wire.from.spot.y - wire.to.spot.y);

class Laying {
  private readonly page: RoutePage;
  private readonly grid: RouteGrid;
  private readonly search: RouteSearch;
  /** What the laid wires run over, and of them those with bends set by a person. */
  private readonly taken: Taken;
  private readonly rigid: Taken;
  private readonly ways: (Way | null)[];
  private readonly costs: number[];
  /** 1 for wires with bends set by a person. */
  private readonly isSet: Uint8Array;
  /** Node numbers of both terminals, by wire. */
  private readonly ends: readonly (readonly [number, number])[];
  /** Numbers of the wires that end on each terminal. */
  private readonly wiresAt = new Map<number, number[]>();

  constructor(page: RoutePage) {
    this.page = page;
    this.grid = gridOf(page.bounds, page.bodies, page.words);
    for (const way of page.across ?? []) openAcross(this.grid, way);
    this.search = new RouteSearch(this.grid);
    this.taken = new Taken(this.grid);
    this.rigid = new Taken(this.grid);
    this.costs = page.wires.map(() => 0);
    this.isSet = Uint8Array.from(page.wires, (wire) => (wire.bends === undefined ? 0 : 1));
    this.ends = page.wires.map(({ from, to }) => [nodeAt(this.grid, from.spot), nodeAt(this.grid, to.spot)]);
    this.ways = page.wires.map(({ from, to, bends }) =>
      bends === undefined ? null : nodesAlong(this.grid, cornersOf(from, to, bends)),
    );
    for (const way of this.ways) {
      if (way === null) continue;
      this.taken.add(way);
      this.rigid.add(way);
    }
    this.ends.forEach(([from, to], index) => {
      for (const node of new Set([from, to])) this.wiresAt.set(node, [...(this.wiresAt.get(node) ?? []), index]);
    });
    for (const [from, to] of this.ends) {
      for (const node of [from, to]) if (node >= 0) this.grid.blocked[node] = 1;
    }
    for (const wire of page.wires) {
      for (const end of [wire.from, wire.to]) {
        const exit = exitOf(this.grid, end, page.bodies);
        if (exit !== null) reserve(this.grid, exit.node);
      }
    }
  }

  /** Lays each wire once; one that finds no free way takes up those in its way, a few times at most. */
  layAll(): void {
    const { wires } = this.page;
    const queue = wires.map((_, index) => index).filter((index) => this.isSet[index] === 0);
    queue.sort((a, b) => span(wires[a]!) - span(wires[b]!) || a - b);
    let patience = 3 * wires.length;
    for (const index of queue) {
      if (this.lay(index) || patience-- <= 0) continue;
      queue.push(...this.layOver(index));
    }
  }

  /** Takes up wires from the dearest on, one at a time, and lays each where it is cheapest now. */
  layDearestAnew(): void {
    const excess = (index: number) => this.costs[index]! - span(this.page.wires[index]!);
    const order = this.page.wires.map((_, index) => index);
    const dear = order.filter((index) => this.isSet[index] === 0 && excess(index) > GOOD_ENOUGH);
    dear.sort((a, b) => excess(b) - excess(a) || a - b);
    for (const index of dear) this.lay(index);
  }

  /** Corners of the laid wires. */
  corners(): ReadonlyMap<WireId, readonly Spot[]> {
    const found = new Map<WireId, readonly Spot[]>();
    this.page.wires.forEach((wire, index) => {
      const way = this.ways[index];
      if (wire.bends !== undefined) found.set(wire.id, cornersOf(wire.from, wire.to, wire.bends));
      else if (way) found.set(wire.id, straightened(way.map((node) => spotOf(this.grid, node))));
    });
    return found;
  }

  private lay(index: number): boolean {
    const found = this.findWay(index, null);
    if (found === null) return false;
    this.put(index, found);
    return true;
  }

  /** Lays a wire over others and takes those up; comes back with their numbers. */
  private layOver(index: number): readonly number[] {
    const mates = new Set(this.ends[index]!.flatMap((terminal) => this.wiresAt.get(terminal)!));
    const firm = [...mates].flatMap((mate) => (this.isSet[mate] === 0 ? [this.ways[mate] ?? []] : []));
    for (const way of firm) this.rigid.add(way);
    const found = this.findWay(index, this.rigid);
    for (const way of firm) this.rigid.remove(way);
    if (found === null) return [];
    this.put(index, found);
    const isOver = runsAlong(this.grid, found.way);
    const inTheWay = this.ways.flatMap((way, other) =>
      way !== null && other !== index && this.isSet[other] === 0 && !mates.has(other) && isOver(way) ? [other] : [],
    );
    for (const other of inTheWay) this.put(other, null);
    return inTheWay;
  }

  private put(index: number, found: Found | null): void {
    const before = this.ways[index];
    if (before) this.taken.remove(before);
    this.ways[index] = found?.way ?? null;
    if (found === null) return;
    this.taken.add(found.way);
    this.costs[index] = found.cost;
  }

  private findWay(index: number, rigid: Taken | null): Found | null {
    const { wires, bodies } = this.page;
    const { from, to } = wires[index]!;
    const exit = exitOf(this.grid, from, bodies);
    const entry = exitOf(this.grid, to, bodies);
    const [start, end] = this.ends[index]!;
    if (start < 0 || end < 0) return null;
    if (start === end) return { way: [start], cost: 0 };
    if (exit?.node === end && entry?.node === start) return { way: [start, end], cost: 1 };
    if (exit === null || entry === null) return null;
    const own = this.ways[index];
    if (own) this.taken.remove(own);
    const found = this.search.find({
      taken: this.taken,
      starts: startsAt(this.grid, exit, this.matesAt(index, start)),
      goals: goalsAt(this.grid, entry, this.matesAt(index, end)),
      rigid,
    });
    if (own) this.taken.add(own);
    return found;
  }

  /** The ways of other laid wires that end on this terminal too. */
  private matesAt(index: number, terminal: number): readonly Way[] {
    return this.wiresAt.get(terminal)!.flatMap((other) => {
      const way = this.ways[other];
      return other !== index && way && way.length > 1 ? [way] : [];
    });
  }
}
