import fc from "fast-check";
import { expect, test } from "vitest";
import {
  back,
  DIRECTIONS,
  type Direction,
  gridOf,
  nextNode,
  type RouteGrid,
  reserve,
} from "../../core/circuit/routeGrid.ts";
import { BEND, type Goal, overCost, type Start } from "../../core/circuit/routeRules.ts";
import { RouteSearch } from "../../core/circuit/routeSearch.ts";
import type { Taken } from "../../core/circuit/routeTaken.ts";
import { trials } from "../long.ts";

const SIDE = 9;
const NEVER = Number.POSITIVE_INFINITY;
const node = fc.nat(SIDE * SIDE - 1);
const direction = fc.constantFrom(...DIRECTIONS);
const box = fc.record({ left: fc.nat(SIDE - 2), top: fc.nat(SIDE - 2), width: fc.nat(2), height: fc.nat(2) });
const boxes = fc
  .array(box, { maxLength: 3 })
  .map((all) => all.map(({ left, top, width, height }) => ({ left, top, right: left + width, bottom: top + height })));
const ends = fc.array(fc.record({ node, direction, cost: fc.integer({ min: 1, max: 9 }) }), {
  minLength: 1,
  maxLength: 3,
});
const line = fc.record({ row: fc.nat(SIDE - 1), isLevel: fc.boolean() });

/** The least cost by going on from every state as long as anything gets cheaper: no order, no guess of what lies ahead. */
function leastCost(grid: RouteGrid, taken: Taken, starts: readonly Start[], goals: readonly Goal[]): number {
  const cost = new Map<number, number>();
  let best = NEVER;
  const turn = (at: number) =>
    grid.blocked[at] !== 0 ? NEVER : BEND + overCost(taken, null, at, 0) + overCost(taken, null, at, 1);
  const arrive = (at: number, going: Direction, so: number): void => {
    for (const { node: aim, enters, cost: last } of goals.filter((goal) => goal.node === at)) {
      if (going === back(enters!)) continue;
      best = Math.min(best, so + last + (aim === at && going !== enters ? turn(at) : 0));
    }
  };
  const open: number[] = [];
  const come = (at: number, going: Direction, so: number): void => {
    const state = 4 * at + going;
    if (so >= (cost.get(state) ?? NEVER)) return;
    cost.set(state, so);
    open.push(state);
    arrive(at, going, so);
  };
  for (const { node: at, direction: going, cost: so } of starts)
    come(at, going, so + overCost(taken, null, at, going & 1));
  for (let state = open.pop(); state !== undefined; state = open.pop()) {
    const [at, facing] = [state >> 2, (state & 3) as Direction];
    for (const going of DIRECTIONS) {
      const next = nextNode(grid, at, going);
      if (going === back(facing) || next < 0) continue;
      const step = (going & 1) === 0 ? taken.enterLevel[next]! : taken.enterUpright[next]!;
      const so = cost.get(state)! + (going === facing ? 0 : turn(at)) + step + overCost(taken, null, next, going & 1);
      if (so < NEVER) come(next, going, so);
    }
  }
  return best;
}

test("a way is found at the least cost there is, or none where there is none", () => {
  let found = 0;
  fc.assert(
    fc.property(boxes, boxes, ends, ends, fc.array(line, { maxLength: 3 }), (bodies, words, from, to, lines) => {
      const grid = gridOf({ left: 0, top: 0, right: SIDE - 1, bottom: SIDE - 1 }, bodies, words);
      const free = (all: typeof from) => all.filter((each) => grid.blocked[each.node] === 0);
      const starts = free(from).map((each): Start => ({ ...each, way: [each.node], isJoint: false }));
      const aims = new Map(free(to).map((each) => [each.node, each]));
      const goals = [...aims.values()].map(
        (each): Goal => ({ node: each.node, enters: each.direction, arms: 0, cost: each.cost, way: [each.node] }),
      );
      for (const { node: at } of goals) reserve(grid, at);
      const search = new RouteSearch(grid);
      for (const { row, isLevel } of lines)
        search.taken.add(Array.from({ length: SIDE }, (_, i) => (isLevel ? row * SIDE + i : i * SIDE + row)));
      const least = leastCost(grid, search.taken, starts, goals);
      expect(search.find({ starts, goals, rigid: null })?.cost ?? NEVER).toBe(least);
      if (least < NEVER) found++;
    }),
    { numRuns: trials(300, 5_000) },
  );
  expect(found).toBeGreaterThan(30);
});
