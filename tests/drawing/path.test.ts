import fc from "fast-check";
import { expect, test } from "vitest";
import type { Spot } from "../../core/drawing/mark.ts";
import { dashPieces, distanceToPath, isInside, offsetPath, pathLength, spotAlong } from "../../core/drawing/path.ts";

const run = (...xy: readonly number[]): readonly Spot[] =>
  Array.from({ length: xy.length / 2 }, (_, i) => ({ x: xy[2 * i]!, y: xy[2 * i + 1]! }));
const close = (spots: readonly Spot[], ...xy: readonly number[]): void => {
  expect(spots.length).toBe(xy.length / 2);
  spots.forEach((spot, i) => {
    expect(spot.x).toBeCloseTo(xy[2 * i]!, 9);
    expect(spot.y).toBeCloseTo(xy[2 * i + 1]!, 9);
  });
};
const corner = run(0, 0, 10, 0, 10, 6);

test("a run is as long as its pieces together", () => {
  expect(pathLength(corner)).toBe(16);
  expect(pathLength(run(3, 4))).toBe(0);
});

test("a spot along the run knows where it is and which way is ahead", () => {
  expect(spotAlong(corner, 4)).toEqual({ at: { x: 4, y: 0 }, degrees: 0 });
  expect(spotAlong(corner, 12)).toEqual({ at: { x: 10, y: 2 }, degrees: 90 });
  expect(spotAlong(corner, 99).at).toEqual({ x: 10, y: 6 });
  expect(spotAlong(corner, -1).at).toEqual({ x: 0, y: 0 });
});

test("an offset to the right of a turn to the right is mitred inside it, to the left outside it", () => {
  close(offsetPath(corner, 1), 0, 1, 9, 1, 9, 6);
  close(offsetPath(corner, -1), 0, -1, 11, -1, 11, 6);
});

test("a closed run keeps all its corners mitred", () => {
  close(offsetPath(run(0, 0, 4, 0, 4, 4, 0, 4), 1, true), 1, 1, 3, 1, 3, 3, 1, 3);
  close(offsetPath(run(0, 0, 4, 0, 4, 4, 0, 4, 0, 0), -1, true), -1, -1, 5, -1, 5, 5, -1, 5);
});

test("spots that repeat change nothing", () => {
  expect(offsetPath(run(0, 0, 0, 0, 10, 0, 10, 0, 10, 6), 1)).toEqual(offsetPath(corner, 1));
});

test("a run that turns back on itself is cut square, not drawn to infinity", () => {
  close(offsetPath(run(0, 0, 10, 0, 0, 0), 1), 0, 1, 10, 1, 10, -1, 0, -1);
});

/** Stairs down to the right: level and upright steps in turn. */
const orthogonal = fc.array(fc.integer({ min: 2, max: 9 }), { minLength: 2, maxLength: 6 }).map((steps) => {
  const spots: Spot[] = [{ x: 0, y: 0 }];
  for (const [i, step] of steps.entries()) {
    const { x, y } = spots.at(-1)!;
    spots.push(i % 2 === 0 ? { x: x + step, y } : { x, y: y + step });
  }
  return spots;
});

test("an offset line keeps its distance from the run everywhere", () => {
  fc.assert(
    fc.property(orthogonal, fc.double({ min: -0.9, max: 0.9, noNaN: true }), (spots, offset) => {
      const shifted = offsetPath(spots, offset);
      const length = pathLength(shifted);
      for (let i = 0; i <= 20; i++) {
        const distance = distanceToPath(spots, spotAlong(shifted, (length * i) / 20).at);
        expect(distance).toBeLessThanOrEqual(Math.abs(offset) * Math.SQRT2 + 1e-9);
        expect(distance).toBeGreaterThanOrEqual(Math.abs(offset) - 1e-9);
      }
    }),
    { seed: 7 },
  );
});

test("dashes start with the run, take turns with gaps, and bend round a corner", () => {
  const pieces = dashPieces(corner, [4, 2]);
  expect(pieces).toEqual([run(0, 0, 4, 0), run(6, 0, 10, 0), run(10, 2, 10, 6)]);
  expect(dashPieces(corner, [7, 2])[1]).toEqual(run(9, 0, 10, 0, 10, 6));
});

test("dashes cover the share of the run that the pattern draws", () => {
  fc.assert(
    fc.property(orthogonal, (spots) => {
      const drawn = dashPieces(spots, [1, 1]).reduce((sum, piece) => sum + pathLength(piece), 0);
      expect(Math.abs(drawn - pathLength(spots) / 2)).toBeLessThanOrEqual(0.5 + 1e-9);
    }),
    { seed: 7 },
  );
});

test("a distance is to the nearest piece, closing piece included", () => {
  expect(distanceToPath(corner, { x: 5, y: 3 })).toBe(3);
  expect(distanceToPath(run(0, 0, 4, 0, 4, 4, 0, 4), { x: 0.5, y: 2 })).toBeGreaterThan(1.5);
  expect(distanceToPath(run(0, 0, 4, 0, 4, 4, 0, 4), { x: 0.5, y: 2 }, true)).toBe(0.5);
});

test("inside is told from outside, in a notch too", () => {
  const notched = run(0, 0, 6, 0, 3, 3, 6, 6, 0, 6);
  expect(isInside(notched, { x: 1, y: 3 })).toBe(true);
  expect(isInside(notched, { x: 5, y: 3 })).toBe(false);
});
