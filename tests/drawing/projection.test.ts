import fc from "fast-check";
import { Matrix, solve } from "ml-matrix";
import { describe, expect, test } from "vitest";
import {
  boxAround,
  type Corner,
  inverse,
  isUnfolded,
  mappedQuad,
  projected,
  projectionOf,
  type Quad,
  rectangle,
  scaled,
  turned,
} from "../../core/drawing/projection.ts";

/**
 * The same map by linear algebra: eight unknowns from the eight equations that four pairs of corners give, with the last
 * entry 1 (direct linear transform; Hartley and Zisserman, "Multiple View Geometry", section 4.1).
 */
function byEquations(from: Quad, to: Quad): (spot: Corner) => Corner {
  const rows = from.flatMap(([x, y], index) => {
    const [u, v] = to[index]!;
    return [
      [x, y, 1, 0, 0, 0, -u * x, -u * y],
      [0, 0, 0, x, y, 1, -v * x, -v * y],
    ];
  });
  const [a, b, c, d, e, f, g, h] = solve(new Matrix(rows), Matrix.columnVector(to.flat())).to1DArray() as number[];
  return ([x, y]) => {
    const w = g! * x + h! * y + 1;
    return [(a! * x + b! * y + c!) / w, (d! * x + e! * y + f!) / w];
  };
}

/** Corners of a rectangle, each knocked off its place by up to a third of a side: mostly unfolded. */
function quads(width: number, height: number): fc.Arbitrary<Quad> {
  const off = (side: number) => fc.double({ min: -side / 3, max: side / 3, noNaN: true });
  return fc
    .array(fc.tuple(off(width), off(height)), { minLength: 4, maxLength: 4 })
    .map((offs) => rectangle(0, 0, width, height).map(([x, y], index) => [x + offs[index]![0], y + offs[index]![1]]))
    .map((quad) => quad as unknown as Quad)
    .filter((quad) => isUnfolded(quad, (width * height) / 50));
}

const PAPER = quads(3_000, 2_000);
const PAGE = quads(297, 210);

describe("a projective map", () => {
  test("takes a unit square to a trapezium as worked by hand", () => {
    // The far side half as long as the near one: its middle line is seen at two thirds of the way.
    const map = projectionOf(rectangle(0, 0, 1, 1), [
      [1, 0],
      [3, 0],
      [4, 3],
      [0, 3],
    ]);
    const [x, y] = projected(map, [0.5, 0.5]);
    expect(x).toBeCloseTo(2, 12);
    expect(y).toBeCloseTo(1, 12);
    expect(projected(map, [1, 0.5])[0]).toBeCloseTo(10 / 3, 12);
  });

  test("is the affine one between rectangles", () => {
    const map = projectionOf(rectangle(0, 0, 100, 50), rectangle(10, 20, 300, 200));
    expect(projected(map, [50, 25])).toEqual([160, 120]);
    expect(map[6]).toBe(0);
    expect(map[7]).toBe(0);
  });

  test("is the one that linear algebra gives, anywhere in the sheet", () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(PAPER, PAGE, share, share, (from, to, across, down) => {
        const spot = projected(projectionOf(rectangle(0, 0, 1, 1), from), [across, down]);
        const [x, y] = projected(projectionOf(from, to), spot);
        const [u, v] = byEquations(from, to)(spot);
        expect(Math.hypot(x - u, y - v)).toBeLessThan(1e-6);
      }),
      { seed: 7, numRuns: 400 },
    );
  });

  test("takes corners to corners, and its inverse takes them back", () => {
    fc.assert(
      fc.property(PAPER, PAGE, (from, to) => {
        const map = projectionOf(from, to);
        expectNear(mappedQuad(map, from), to, 1e-8);
        expectNear(mappedQuad(inverse(map), to), from, 1e-6);
      }),
      { seed: 8, numRuns: 300 },
    );
  });

  test("keeps what lies on a line on a line", () => {
    fc.assert(
      fc.property(PAPER, PAGE, (from, to) => {
        const map = projectionOf(from, to);
        const middle: Corner = [(from[0][0] + from[2][0]) / 2, (from[0][1] + from[2][1]) / 2];
        const [ax, ay] = to[0];
        const [bx, by] = to[2];
        const [x, y] = projected(map, middle);
        expect(Math.abs((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / Math.hypot(bx - ax, by - ay)).toBeLessThan(1e-7);
      }),
      { seed: 9, numRuns: 300 },
    );
  });
});

function expectNear(one: Quad, other: Quad, least: number): void {
  for (const [index, [x, y]] of one.entries()) {
    expect(Math.hypot(x - other[index]![0], y - other[index]![1])).toBeLessThan(least);
  }
}

describe("four corners", () => {
  const a4 = rectangle(0, 0, 297, 210);
  const [one, two, three, four] = a4;

  test.each([
    ["a rectangle", a4, true],
    ["turned by a quarter", [two, three, four, one], true],
    ["seen from behind", [two, one, four, three], false],
    ["crossed over", [one, three, two, four], false],
    ["with one corner pushed in", [one, two, [60, 50], four], false],
    ["with three on a line", [one, two, [148.5, 105], four], false],
    ["all in one spot", [one, one, one, one], false],
    ["not a number", [one, two, three, [Number.NaN, 0]], false],
  ] as const)("%s: unfolded or not", (_, quad, isSo) => expect(isUnfolded(quad, 1)).toBe(isSo));

  test("turned four times lie as they did, and once as a quarter clockwise", () => {
    expect([1, 2, 3, 4].reduce((quad) => turned(quad, 1), a4)).toEqual(a4);
    const once = turned(a4, 1);
    expect(boxAround(once)).toEqual({ left: 43.5, top: -43.5, right: 253.5, bottom: 253.5 });
    expect(once[0]).toEqual([253.5, -43.5]);
    expect(turned(once, -1)).toEqual(a4);
  });

  test("scaled keep their middle", () => {
    expect(boxAround(scaled(a4, 2))).toEqual({ left: -148.5, top: -105, right: 445.5, bottom: 315 });
  });
});
