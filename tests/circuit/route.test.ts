import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { routeWires } from "../../core/circuit/route.ts";
import type { RouteEnd } from "../../core/circuit/routeEnds.ts";
import type { RoutePage, RouteWire } from "../../core/circuit/routePage.ts";
import type { Spot } from "../../core/drawing/mark.ts";
import type { Bounds } from "../../core/drawing/measure.ts";
import type { Side } from "../../core/parts/kind.ts";

const A3: Bounds = { left: 2, top: 2, right: 166, bottom: 116 };

/** A part 4 wide and 6 high with one terminal in the middle of each edge. */
function ends(bodies: readonly Bounds[], body: number): Readonly<Record<Side, RouteEnd>> {
  const { left, top, right, bottom } = bodies[body]!;
  const [x, y] = [(left + right) / 2, (top + bottom) / 2];
  return {
    up: { spot: { x, y: top }, side: "up", body },
    down: { spot: { x, y: bottom }, side: "down", body },
    left: { spot: { x: left, y }, side: "left", body },
    right: { spot: { x: right, y }, side: "right", body },
  };
}

function bodyAt(x: number, y: number): Bounds {
  return { left: x, top: y, right: x + 4, bottom: y + 6 };
}

type Step = readonly [Spot, Spot];

function stepsOf(corners: readonly Spot[]): readonly Step[] {
  const steps: Step[] = [];
  for (let i = 1; i < corners.length; i++) {
    const [from, to] = [corners[i - 1]!, corners[i]!];
    const length = Math.abs(to.x - from.x) + Math.abs(to.y - from.y);
    const [x, y] = [Math.sign(to.x - from.x), Math.sign(to.y - from.y)];
    for (let n = 0; n < length; n++) {
      const here = { x: from.x + x * n, y: from.y + y * n };
      steps.push([here, { x: here.x + x, y: here.y + y }]);
    }
  }
  return steps;
}

const stepKey = ([a, b]: Step) => [`${a.x},${a.y}`, `${b.x},${b.y}`].sort().join(" ");

/** Wires that share a terminal, directly or by others, have one number. */
function netsOf(wires: readonly RouteWire[]): readonly number[] {
  const key = ({ spot }: RouteEnd) => `${spot.x},${spot.y}`;
  const nets = wires.map((_, i) => i);
  for (let changed = true; changed; ) {
    changed = false;
    wires.forEach((a, i) => {
      wires.forEach((b, j) => {
        const meet = [key(a.from), key(a.to)].some((end) => end === key(b.from) || end === key(b.to));
        if (meet && nets[i]! < nets[j]!) {
          nets[j] = nets[i]!;
          changed = true;
        }
      });
    });
  }
  return nets;
}

/** Checks every law of routes on a page and gives the crossings, bends and length. */
function judge(page: RoutePage, routes: ReadonlyMap<string, readonly Spot[]>) {
  const nets = netsOf(page.wires);
  const owner = new Map<string, number>();
  let bends = 0;
  let length = 0;
  page.wires.forEach((wire, index) => {
    const corners = routes.get(wire.id);
    if (!corners) return;
    expect(corners[0]).toEqual(wire.from.spot);
    expect(corners.at(-1)).toEqual(wire.to.spot);
    bends += corners.length - 2;
    for (let i = 1; i < corners.length; i++) {
      const [from, to] = [corners[i - 1]!, corners[i]!];
      expect(from.x === to.x || from.y === to.y).toBe(true);
    }
    for (const [from, to] of stepsOf(corners)) {
      length++;
      const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
      for (const box of page.bodies) {
        const isInside = middle.x > box.left && middle.x < box.right && middle.y > box.top && middle.y < box.bottom;
        expect(isInside).toBe(false);
      }
      const key = stepKey([from, to]);
      const other = owner.get(key);
      if (other !== undefined) expect(nets[other]).toBe(nets[index]);
      owner.set(key, index);
    }
  });
  return { bends, length };
}

/** Crossings of straight runs of different wires. */
function crossings(routes: ReadonlyMap<string, readonly Spot[]>): number {
  const passes = new Map<string, Set<string>>();
  for (const [id, corners] of routes) {
    for (const [, to] of stepsOf(corners).slice(0, -1)) {
      const at = `${to.x},${to.y}`;
      passes.set(at, (passes.get(at) ?? new Set()).add(id));
    }
  }
  return [...passes.values()].filter((ids) => ids.size > 1).length;
}

describe("routes", () => {
  test("two terminals facing each other are joined by one straight line", () => {
    const bodies = [bodyAt(10, 10), bodyAt(30, 10)];
    const wires = [{ id: "W1", from: ends(bodies, 0).right, to: ends(bodies, 1).left }];
    const routes = routeWires({ bounds: A3, bodies, words: [], wires }).corners;
    expect(routes.get("W1")).toEqual([
      { x: 14, y: 13 },
      { x: 30, y: 13 },
    ]);
  });

  test("a wire crosses a bar straight where a way leads across, and turns or runs along nowhere in it", () => {
    const bar = { left: 5, top: 14, right: 60, bottom: 19 };
    const bodies = [bodyAt(30, 2), bodyAt(30, 30), bar];
    const wires = [{ id: "W1", from: ends(bodies, 0).down, to: ends(bodies, 1).up }];
    const across = [{ left: 32, right: 32, top: 14, bottom: 19 }];
    expect(routeWires({ bounds: A3, bodies, words: [], across, wires }).corners.get("W1")).toHaveLength(2);
    const aside = [{ left: 40, right: 40, top: 14, bottom: 19 }];
    const bent = routeWires({ bounds: A3, bodies, words: [], across: aside, wires }).corners.get("W1")!;
    for (const { x, y } of bent) expect(x >= bar.left && x <= bar.right && y >= bar.top && y <= bar.bottom).toBe(false);
    expect(stepsOf(bent).some(([a, b]) => a.x === 40 && b.x === 40 && a.y === 16)).toBe(true);
  });

  test("a wire goes round a body that stands between its terminals", () => {
    const bodies = [bodyAt(10, 10), bodyAt(30, 10), bodyAt(20, 8)];
    const wires = [{ id: "W1", from: ends(bodies, 0).right, to: ends(bodies, 1).left }];
    const page = { bounds: A3, bodies, words: [], wires };
    const routes = routeWires(page).corners;
    expect(routes.has("W1")).toBe(true);
    judge(page, routes);
  });

  test("a wire leaves along the side of its terminal even when the other lies behind it", () => {
    const bodies = [bodyAt(30, 10), bodyAt(10, 10)];
    const wires = [{ id: "W1", from: ends(bodies, 0).right, to: ends(bodies, 1).left }];
    const corners = routeWires({ bounds: A3, bodies, words: [], wires }).corners.get("W1")!;
    expect(corners[1]!.x).toBeGreaterThan(34);
    expect(corners.at(-2)!.x).toBeLessThan(10);
  });

  test("a wire keeps off words where a short way round them is free", () => {
    const bodies = [bodyAt(10, 10), bodyAt(40, 10)];
    const words = [{ left: 20, top: 12.4, right: 30, bottom: 13.6 }];
    const wires = [{ id: "W1", from: ends(bodies, 0).right, to: ends(bodies, 1).left }];
    const corners = routeWires({ bounds: A3, bodies, words, wires }).corners.get("W1")!;
    const over = stepsOf(corners).filter(([, to]) => to.x > 20 && to.x < 30 && to.y === 13);
    expect(over).toEqual([]);
  });

  test("bends set by a person are kept, with an elbow where two are not in line", () => {
    const bodies = [bodyAt(10, 10), bodyAt(40, 30)];
    const bends = [
      [20, 13],
      [20, 25],
    ] as const;
    const wires = [{ id: "W1", from: ends(bodies, 0).right, to: ends(bodies, 1).up, bends }];
    const corners = routeWires({ bounds: A3, bodies, words: [], wires }).corners.get("W1")!;
    expect(corners).toEqual([
      { x: 14, y: 13 },
      { x: 20, y: 13 },
      { x: 20, y: 25 },
      { x: 42, y: 25 },
      { x: 42, y: 30 },
    ]);
  });

  test("two wires of one terminal fork within a few units of it", () => {
    const bodies = [bodyAt(10, 10), bodyAt(40, 10), bodyAt(40, 40)];
    const from = ends(bodies, 0).right;
    const wires = [
      { id: "W1", from, to: ends(bodies, 1).left },
      { id: "W2", from, to: ends(bodies, 2).left },
    ];
    const page = { bounds: A3, bodies, words: [], wires };
    const routes = routeWires(page).corners;
    judge(page, routes);
    const first = new Set(stepsOf(routes.get("W1")!).map(stepKey));
    const shared = stepsOf(routes.get("W2")!).filter((step) => first.has(stepKey(step)));
    expect(shared.length).toBeGreaterThan(0);
    expect(shared.length).toBeLessThanOrEqual(5);
  });

  test("parallel wires between two rows of terminals stay 2 units apart and do not cross", () => {
    const bodies = [
      { left: 10, top: 10, right: 20, bottom: 14 },
      { left: 40, top: 40, right: 50, bottom: 44 },
    ];
    const wires = [0, 2, 4, 6].map((x, i) => ({
      id: `W${i}`,
      from: { spot: { x: 12 + x, y: 14 }, side: "down" as const, body: 0 },
      to: { spot: { x: 42 + x, y: 40 }, side: "up" as const, body: 1 },
    }));
    const page = { bounds: A3, bodies, words: [], wires };
    const routes = routeWires(page).corners;
    judge(page, routes);
    expect(routes.size).toBe(4);
    expect(crossings(routes)).toBe(0);
    const level = [...routes.values()].map((corners) => corners.find((spot, i) => corners[i + 1]?.y === spot.y)!.y);
    level.sort((a, b) => a - b);
    for (let i = 1; i < level.length; i++) expect(level[i]! - level[i - 1]!).toBeGreaterThanOrEqual(2);
  });
});

const sides: readonly Side[] = ["up", "down", "left", "right"];

/** Pages of up to 12 parts that keep 4 units from each other, with wires between random terminals. */
const pages = fc
  .record({
    places: fc.uniqueArray(fc.record({ column: fc.nat(8), row: fc.nat(5), dx: fc.nat(3), dy: fc.nat(3) }), {
      minLength: 2,
      maxLength: 12,
      selector: ({ column, row }) => `${column},${row}`,
    }),
    wires: fc.array(
      fc.record({
        from: fc.nat(99),
        to: fc.nat(99),
        fromSide: fc.constantFrom(...sides),
        toSide: fc.constantFrom(...sides),
      }),
      { maxLength: 14 },
    ),
  })
  .map(({ places, wires }): RoutePage => {
    const bodies = places.map(({ column, row, dx, dy }) => bodyAt(10 + column * 12 + dx, 8 + row * 14 + dy));
    return {
      bounds: A3,
      bodies,
      words: [],
      wires: wires
        .map(({ from, to, fromSide, toSide }, i) => ({
          id: `W${i}`,
          from: ends(bodies, from % bodies.length)[fromSide],
          to: ends(bodies, to % bodies.length)[toSide],
        }))
        .filter(({ from, to }) => from.body !== to.body),
    };
  });

describe("routes of any page", () => {
  test("are at right angles from terminal to terminal, through no body and over no wire of another net", () => {
    fc.assert(
      fc.property(pages, (page) => {
        const routes = routeWires(page).corners;
        expect(routes.size).toBe(page.wires.length);
        judge(page, routes);
      }),
      { seed: 7, numRuns: 60 },
    );
  });

  test("are the same whenever the same page is routed", () => {
    fc.assert(
      fc.property(pages, (page) => {
        expect([...routeWires(page).corners]).toEqual([...routeWires(page).corners]);
      }),
      { seed: 8, numRuns: 15 },
    );
  });

  test("take well under a second for an A3 page of 60 parts and 90 wires", () => {
    const bodies = Array.from({ length: 60 }, (_, i) => bodyAt(6 + (i % 12) * 13, 8 + Math.floor(i / 12) * 21));
    const reach = [1, 12, 2, 13, 24, 11];
    const wires = Array.from({ length: 90 }, (_, i) => ({
      id: `W${i}`,
      from: ends(bodies, i % 60)[sides[i % 4]!],
      to: ends(bodies, (i + reach[i % 6]!) % 60)[sides[(i + 1 + (i % 3)) % 4]!],
    }));
    const page = { bounds: A3, bodies, words: [], wires };
    const begin = process.cpuUsage();
    const routes = routeWires(page).corners;
    const milliseconds = process.cpuUsage(begin).user / 1000;
    judge(page, routes);
    expect(routes.size).toBe(wires.length);
    // 0.45 s; the time of this process alone, as others run meanwhile. The limit leaves room for a slow machine.
    expect(milliseconds).toBeLessThan(2000);
  });
});
