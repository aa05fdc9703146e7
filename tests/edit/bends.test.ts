import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cornersOf } from "../../core/circuit/routeBends.ts";
import type { RouteEnd } from "../../core/circuit/routeEnds.ts";
import type { Spot } from "../../core/drawing/mark.ts";
import { bendAdded, bendRemoved, segmentMoved } from "../../core/edit/setBends.ts";

const path = (...spots: readonly (readonly [number, number])[]): readonly Spot[] => spots.map(([x, y]) => ({ x, y }));
/** Down, right, down, right: both ends and three bends. */
const STAIR = path([0, 0], [0, 10], [20, 10], [20, 30], [40, 30]);

/** A path at right angles that turns at every corner. */
const paths = fc
  .tuple(
    fc.boolean(),
    fc.array(fc.integer({ min: 3, max: 12 }), { minLength: 1, maxLength: 7 }),
    fc.infiniteStream(fc.boolean()),
  )
  .map(([startsLevel, steps, signs]) => {
    const spots: Spot[] = [{ x: 50, y: 50 }];
    steps.forEach((step, index) => {
      const { x, y } = spots.at(-1)!;
      const by = signs.next().value ? step : -step;
      spots.push(startsLevel === (index % 2 === 0) ? { x: x + by, y } : { x, y: y + by });
    });
    return spots;
  });

/** The path that the sheet draws with these bends between the same ends, which leave the way the path did. */
function drawn(before: readonly Spot[], bends: readonly (readonly [number, number])[]): readonly Spot[] {
  const end = (spot: Spot, towards: Spot): RouteEnd => ({
    spot,
    side: spot.y === towards.y ? (towards.x > spot.x ? "right" : "left") : towards.y > spot.y ? "down" : "up",
    body: 0,
  });
  return cornersOf(end(before[0]!, before[1]!), end(before.at(-1)!, before.at(-2)!), bends);
}

function isSquare(spots: readonly Spot[]): boolean {
  return spots.every(({ x, y }, index) => index === 0 || x === spots[index - 1]!.x || y === spots[index - 1]!.y);
}

describe("moving a segment", () => {
  test("takes the bends at its ends along", () => {
    expect(segmentMoved(STAIR, 1, -4)).toEqual([
      [0, 6],
      [20, 6],
      [20, 30],
    ]);
    expect(segmentMoved(STAIR, 2, 5)).toEqual([
      [0, 10],
      [25, 10],
      [25, 30],
    ]);
  });

  test("leaves a stub at a terminal", () => {
    expect(segmentMoved(STAIR, 0, 6)).toEqual([
      [0, 2],
      [6, 2],
      [6, 10],
      [20, 10],
      [20, 30],
    ]);
    expect(segmentMoved(STAIR, 3, -6)).toEqual([
      [0, 10],
      [20, 10],
      [20, 24],
      [38, 24],
      [38, 30],
    ]);
    expect(segmentMoved(path([0, 0], [9, 0]), 0, 3)).toEqual([
      [2, 0],
      [2, 3],
      [7, 3],
      [7, 0],
    ]);
  });

  test("into line with the next makes one straight stretch of them", () => {
    expect(segmentMoved(STAIR, 2, -20)).toEqual([[0, 30]]);
  });

  test("that is not there, or by nothing, changes nothing", () => {
    for (const [index, by] of [
      [7, 3],
      [-1, 3],
      [0, 0],
      [2, 0],
    ] as const) {
      expect(segmentMoved(STAIR, index, by)).toEqual([
        [0, 10],
        [20, 10],
        [20, 30],
      ]);
    }
  });

  test("gives bends that the sheet draws just so, at right angles, and moving back undoes it inside", () => {
    fc.assert(
      fc.property(paths, fc.nat(), fc.integer({ min: -20, max: 20 }), (spots, pick, by) => {
        const index = pick % (spots.length - 1);
        const bends = segmentMoved(spots, index, by);
        const next = [spots[0]!, ...bends.map(([x, y]) => ({ x, y })), spots.at(-1)!];
        expect(isSquare(next)).toBe(true);
        if (bends.length > 0) expect(drawn(spots, bends)).toEqual(next);
        const isInside = index > 0 && index < spots.length - 2 && next.length === spots.length;
        if (isInside) expect(segmentMoved(next, index, -by)).toEqual(spots.slice(1, -1).map(({ x, y }) => [x, y]));
      }),
      { seed: 5, numRuns: 500 },
    );
  });
});

describe("adding and removing a bend", () => {
  test("parts a segment and steps what lies beyond", () => {
    expect(bendAdded(STAIR, 1, { x: 8.3, y: 11 }, 5)).toEqual([
      [0, 10],
      [8, 10],
      [8, 15],
      [20, 15],
      [20, 30],
    ]);
    expect(bendAdded(STAIR, 3, { x: 30, y: 30 }, -3)).toEqual([
      [0, 10],
      [20, 10],
      [20, 30],
      [30, 30],
      [30, 27],
      [38, 27],
      [38, 30],
    ]);
    expect(bendAdded(STAIR, 1, { x: 99, y: 0 }, 5)).toEqual(segmentMoved(STAIR, 1, 5));
    expect(bendAdded(STAIR, 9, { x: 0, y: 0 }, 5)).toEqual([
      [0, 10],
      [20, 10],
      [20, 30],
    ]);
  });

  test("takes the nearest other bend out too where one alone cannot go", () => {
    expect(bendRemoved(STAIR, 1)).toEqual([[0, 30]]);
    expect(bendRemoved(STAIR, 3)).toEqual([[0, 30]]);
    expect(bendRemoved(path([0, 0], [0, 10], [20, 10], [20, 30]), 1)).toEqual([[0, 30]]);
    expect(bendRemoved(path([0, 0], [0, 10], [20, 10]), 1)).toEqual([]);
    expect(bendRemoved(STAIR, 0)).toEqual([
      [0, 10],
      [20, 10],
      [20, 30],
    ]);
  });

  test("leaves fewer bends, at right angles, between the same ends", () => {
    fc.assert(
      fc.property(paths, fc.nat(), (spots, pick) => {
        if (spots.length < 3) return;
        const bends = bendRemoved(spots, 1 + (pick % (spots.length - 2)));
        expect(bends.length).toBeLessThan(spots.length - 2);
        const next = [spots[0]!, ...bends.map(([x, y]) => ({ x, y })), spots.at(-1)!];
        if (bends.length > 0) expect(isSquare(next)).toBe(true);
      }),
      { seed: 6, numRuns: 500 },
    );
  });
});
