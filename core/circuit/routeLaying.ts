import type { WireId } from "../base/ids.ts";
import type { Spot } from "../drawing/mark.ts";
import { cornersOf, nodesAlong, straightened } from "./routeBends.ts";
import { type Exit, exitOf, goalsAt, startsAt } from "./routeEnds.ts";
import { gridOf, nodeAt, openAcross, type RouteGrid, reserve, spotOf } from "./routeGrid.ts";
import {
  differences,
  isSameFound,
  isSameWay,
  type Look,
  type RouteMemory,
  type Trail,
  trailsLeft,
} from "./routeMemory.ts";
import type { RoutePage, RouteWire } from "./routePage.ts";
import { type Found, RouteSearch } from "./routeSearch.ts";
import { runsAlong, Taken, type Way } from "./routeTaken.ts";
import { TileTimes } from "./routeTiles.ts";

/** A wire that costs this little beyond its plain length (a bend or two) is not laid anew. */
const GOOD_ENOUGH = 10;

const span = (wire: RouteWire): number =>
  Math.abs(wire.from.spot.x - wire.to.spot.x) + Math.abs(wire.from.spot.y - wire.to.spot.y);

/** A wire while it is being laid. */
interface Laid {
  readonly wire: RouteWire;
  /** Nodes of both terminals; -1 off the grid. */
  readonly ends: readonly [number, number];
  readonly exits: readonly [Exit | null, Exit | null];
  /** Its bends are set by a person. */
  readonly isSet: boolean;
  way: Way | null;
  /** Every way that it had in this laying. */
  readonly ways: Way[];
  cost: number;
  readonly looks: Look[];
  /** When the last look was over, and what came of it was put down. */
  lookedAt: number;
  isTroubled: boolean;
  /** What became of it in the laying before, as long as all goes as it did then. */
  known: Trail | null;
}

/**
 * Lays the wires of one page. A look for a way depends on nothing but the tiles that it came through; so where none of
 * them differs from the laying before, or has changed since the last look, what came of that look is taken as it is. The
 * wires that are known keep their order among each other, and all that others do differently is marked where they lie.
 */
export class Laying {
  private readonly page: RoutePage;
  private readonly grid: RouteGrid;
  private readonly search: RouteSearch;
  /** What the laid wires run over. */
  private readonly taken: Taken;
  private readonly wires: readonly Laid[];
  /** Numbers of the wires that end on each terminal. */
  private readonly wiresAt = new Map<number, number[]>();
  /** Tiles that differ from the laying before at some time of both, marked with 1. */
  private readonly differs: TileTimes;
  /** When wires were last laid or taken up near each tile; time is counted by such changes. */
  private readonly changes: TileTimes;
  private time = 0;

  constructor(page: RoutePage, before: RouteMemory | null) {
    const { wires, bodies } = page;
    this.page = page;
    this.grid = gridOf(page.bounds, bodies, page.words);
    for (const way of page.across ?? []) openAcross(this.grid, way);
    this.wires = wires.map((wire) => this.begun(wire));
    for (const [index, { ends }] of this.wires.entries()) this.enter(ends, index);
    for (const { ends } of this.wires) for (const node of ends) if (node >= 0) this.grid.blocked[node] = 1;
    for (const { exits } of this.wires) for (const exit of exits) if (exit !== null) reserve(this.grid, exit.node);
    const differs = before && differences(before.grid, this.grid);
    this.differs = differs ?? new TileTimes(this.grid);
    this.changes = new TileTimes(this.grid);
    if (before && differs) this.recall(before);
    this.search = differs && before ? before.search : new RouteSearch(this.grid);
    if (differs) this.search.moveTo(this.grid);
    this.taken = this.search.taken;
    for (const { way } of this.wires) if (way !== null) this.taken.add(way);
  }

  private begun(wire: RouteWire): Laid {
    const { grid } = this;
    const { bodies } = this.page;
    const { from, to, bends } = wire;
    const way = bends === undefined ? null : nodesAlong(grid, cornersOf(from, to, bends));
    return {
      wire,
      ends: [nodeAt(grid, from.spot), nodeAt(grid, to.spot)],
      exits: [exitOf(grid, from, bodies), exitOf(grid, to, bodies)],
      isSet: bends !== undefined,
      way,
      ways: way === null ? [] : [way],
      cost: 0,
      looks: [],
      lookedAt: 0,
      isTroubled: false,
      known: null,
    };
  }

  private enter([from, to]: Laid["ends"], index: number): void {
    for (const node of from === to ? [from] : [from, to]) {
      const list = this.wiresAt.get(node);
      if (list) list.push(index);
      else this.wiresAt.set(node, [index]);
    }
  }

  /** Finds out what is known of the wires; all ways of those that are gone or other now are marked. */
  private recall(before: RouteMemory): void {
    const left = trailsLeft(before, this.page.wires, this.page.bodies);
    this.wires.forEach((each, index) => {
      each.known = left[index]!;
      if (each.isSet && each.known !== null) each.way = each.known.way;
      else this.markAll(each.ways);
    });
    const held = new Set(left);
    for (const trail of before.trails.values()) if (!held.has(trail)) this.markAll(trail.ways);
  }

  // ---------------------------------------------------------------- the rounds

  /** Lays each wire once; one that finds no free way takes up those in its way, a few times at most. */
  layAll(): void {
    const queue = this.wires.flatMap(({ isSet }, index) => (isSet ? [] : [index]));
    const spans = this.wires.map(({ wire }) => span(wire));
    queue.sort((a, b) => spans[a]! - spans[b]! || a - b);
    let patience = 3 * this.wires.length;
    for (const index of queue) {
      if (this.lay(index)) continue;
      this.trouble(index);
      if (patience-- > 0) queue.push(...this.layOver(index));
    }
  }

  /** Takes up wires from the dearest on, one at a time, and lays each where it is cheapest now. */
  layDearestAnew(): void {
    const excess = this.wires.map(({ wire, cost }) => cost - span(wire));
    const dear = this.wires.flatMap(({ isSet }, index) => (!isSet && excess[index]! > GOOD_ENOUGH ? [index] : []));
    dear.sort((a, b) => excess[b]! - excess[a]! || a - b);
    for (const index of dear) this.lay(index);
  }

  private lay(index: number): boolean {
    const found = this.look(index);
    if (found !== null) this.put(index, found);
    this.wires[index]!.lookedAt = this.time;
    return found !== null;
  }

  /** Lays a wire over others and takes those up; comes back with their numbers. */
  private layOver(index: number): readonly number[] {
    const mates = new Set(this.wires[index]!.ends.flatMap((terminal) => this.wiresAt.get(terminal)!));
    const rigid = new Taken(this.grid);
    this.wires.forEach(({ way, isSet }, other) => {
      if (way !== null && (isSet || mates.has(other))) rigid.add(way);
    });
    const found = this.findWay(index, rigid);
    if (found === null) return [];
    this.put(index, found);
    const isOver = runsAlong(this.grid, found.way);
    const inTheWay = this.wires.flatMap(({ way, isSet }, other) =>
      way !== null && other !== index && !isSet && !mates.has(other) && isOver(way) ? [other] : [],
    );
    for (const other of inTheWay) {
      this.trouble(other);
      this.put(other, null);
    }
    return inTheWay;
  }

  // ---------------------------------------------------------------- one wire

  /** The way of a wire round all others as they lie now; null where there is none. */
  private look(index: number): Found | null {
    const each = this.wires[index]!;
    const { known, looks } = each;
    const then = known?.looks[looks.length];
    if (then && this.differs.areStill(then.tiles, 0)) {
      looks.push(then);
      return then.found;
    }
    const last = looks.at(-1);
    const isStill = last !== undefined && this.changes.areStill(last.tiles, each.lookedAt);
    const look = isStill ? last : this.lookAnew(index);
    if (then && isSameFound(then.found, look.found)) {
      looks.push({ found: then.found, tiles: look.tiles });
      return then.found;
    }
    looks.push(look);
    this.forget(index);
    return look.found;
  }

  private lookAnew(index: number): Look {
    const { ends, exits } = this.wires[index]!;
    const found = this.findWay(index, null);
    return { found, tiles: this.search.tilesWith([...ends, ...exits.map((exit) => exit?.node ?? -1)]) };
  }

  private findWay(index: number, rigid: Taken | null): Found | null {
    const {
      ends: [start, end],
      exits: [exit, entry],
      way,
    } = this.wires[index]!;
    this.search.clear();
    if (start < 0 || end < 0) return null;
    if (start === end) return { way: [start], cost: 0 };
    if (exit?.node === end && entry?.node === start) return { way: [start, end], cost: 1 };
    if (exit === null || entry === null) return null;
    if (way !== null) this.taken.remove(way);
    const found = this.search.find({
      starts: startsAt(this.grid, exit, this.matesAt(index, start)),
      goals: goalsAt(this.grid, entry, this.matesAt(index, end)),
      rigid,
    });
    if (way !== null) this.taken.add(way);
    return found;
  }

  /** The ways of other laid wires that end on this terminal too. */
  private matesAt(index: number, terminal: number): readonly Way[] {
    return this.wiresAt.get(terminal)!.flatMap((other) => {
      const { way } = this.wires[other]!;
      return other !== index && way !== null && way.length > 1 ? [way] : [];
    });
  }

  /** Lays a wire along a way, or takes it up. */
  private put(index: number, found: Found | null): void {
    const each = this.wires[index]!;
    const { way } = each;
    if (found !== null) each.cost = found.cost;
    if (way !== null && found !== null && isSameWay(way, found.way)) {
      each.way = found.way;
      return;
    }
    this.time += 1;
    if (way !== null) {
      this.taken.remove(way);
      for (const node of way) this.changes.mark(node, this.time);
    }
    each.way = found?.way ?? null;
    if (found === null) return;
    each.ways.push(found.way);
    this.taken.add(found.way);
    for (const node of found.way) this.changes.mark(node, this.time);
    if (each.known === null) this.markAll([found.way]);
  }

  private trouble(index: number): void {
    this.wires[index]!.isTroubled = true;
    this.forget(index);
  }

  /** From here on the wire is laid otherwise than before: whoever comes near it, or near where it lay, has to look anew. */
  private forget(index: number): void {
    const each = this.wires[index]!;
    if (each.known === null) return;
    this.markAll(each.known.ways);
    each.known = null;
  }

  private markAll(ways: readonly Way[]): void {
    for (const way of ways) for (const node of way) this.differs.mark(node, 1);
  }

  // ---------------------------------------------------------------- what came of it

  /** Corners of the laid wires, and the laying to be kept for the next. */
  routes(): { readonly corners: ReadonlyMap<WireId, readonly Spot[]>; readonly memory: RouteMemory } {
    const trails = new Map(this.wires.map((each, index) => [each.wire.id, this.trailOf(each, index)]));
    const corners = new Map<WireId, readonly Spot[]>();
    for (const [id, trail] of trails) if (trail.corners !== null) corners.set(id, trail.corners);
    return { corners, memory: { grid: this.grid, search: this.search, trails } };
  }

  private trailOf({ wire, way, ways, looks, isTroubled, known }: Laid, index: number): Trail {
    const { from, to, bends } = wire;
    const { bodies } = this.page;
    const corners =
      known !== null && known.way === way
        ? known.corners
        : bends !== undefined
          ? cornersOf(from, to, bends)
          : way && straightened(way.map((node) => spotOf(this.grid, node)));
    return { index, wire, bodies: [bodies[from.body], bodies[to.body]], looks, isTroubled, way, ways, corners };
  }
}
