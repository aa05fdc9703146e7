import { describe, expect, test } from "vitest";
import type { Mark } from "../../core/drawing/mark.ts";
import { boundsOf, boundsOfAll, distanceTo, textWidth } from "../../core/drawing/measure.ts";
import { paintsOf } from "../../core/drawing/paintMark.ts";
import { gridUnitsOf, millimetresOf } from "../../core/drawing/scale.ts";
import { specimen } from "../pictures/specimen.ts";
import { colourAt, gridOf } from "./raster.ts";

const wire: Mark = { mark: "line", spots: [{ x: 0, y: 0 }, { x: 10, y: 0 }], role: "wire-powered" }; // biome-ignore format: one line
const text: Mark = {
  mark: "text",
  at: { x: 10, y: 10 },
  text: "X5-4",
  points: 10,
  weight: 700,
  anchor: "end",
  role: "text",
};

test("bounds take in the weight of the line", () => {
  const { top, bottom } = boundsOf(wire);
  expect(bottom - top).toBeCloseTo(gridUnitsOf(0.8), 9);
  const pair = boundsOf({ ...wire, role: "wire-grounded" } as Mark);
  expect(pair.bottom - pair.top).toBeCloseTo(gridUnitsOf(1.16 + 0.42), 9);
});

test("bounds of type lie to the left of an end anchor, and turn with it", () => {
  const width = textWidth("X5-4", 10, 700);
  expect(boundsOf(text).left).toBeCloseTo(10 - width, 9);
  expect(boundsOf(text).right).toBeCloseTo(10, 9);
  const turned = boundsOf({ ...text, turn: 90 } as Mark);
  expect(turned.top).toBeCloseTo(10 - width, 9);
  expect(turned.bottom).toBeCloseTo(10, 9);
});

test("bounds of an arc reach as far as it bulges and no farther", () => {
  const arc: Mark = { mark: "arc", at: { x: 0, y: 0 }, radius: 4, from: 180, to: 0, role: "symbol" };
  const { left, top, right, bottom } = boundsOf(arc);
  const half = gridUnitsOf(0.25);
  expect([left, top, right, bottom].map((side) => Math.round(side * 1e6) / 1e6)).toEqual(
    [-4 - half, -4 - half, 4 + half, half].map((side) => Math.round(side * 1e6) / 1e6),
  );
});

test("bounds of several marks hold each of them; of none there are none", () => {
  expect(boundsOfAll([wire, text])).toEqual({
    left: boundsOf(wire).left,
    top: boundsOf(wire).top,
    right: boundsOf(wire).right,
    bottom: boundsOf(text).bottom,
  });
  expect(boundsOfAll([])).toBeUndefined();
});

test("the inside of a body is hit, the inside of a frame is not", () => {
  const body: Mark = { mark: "box", at: { x: 0, y: 0 }, width: 8, height: 6, role: "body" };
  expect(distanceTo(body, { x: 4, y: 3 })).toBe(0);
  expect(distanceTo({ ...body, role: "frame" } as Mark, { x: 4, y: 3 })).toBeCloseTo(3 - gridUnitsOf(0.125), 9);
  expect(distanceTo(body, { x: 12, y: 3 })).toBeCloseTo(4 - gridUnitsOf(0.13), 9);
});

test("turned type is hit where it is drawn", () => {
  const upright = { ...text, turn: 90 } as Mark;
  expect(distanceTo(upright, { x: 10.3, y: 9 })).toBe(0);
  expect(distanceTo(upright, { x: 9, y: 9.9 })).toBeGreaterThan(0);
});

describe("hitting equals drawing, over every mark of the specimen", () => {
  const { marks } = specimen();
  const small = marks.filter((mark) => mark.mark !== "text" && boundsOf(mark).right - boundsOf(mark).left < 40);

  test("what is inked is hit and lies in the bounds", () => {
    let inked = 0;
    // A mitred corner reaches beyond half a line's weight by at most this share of it.
    const tip = gridUnitsOf(1.7 / 2) * (Math.SQRT2 - 1) + 1e-6;
    for (const mark of small) {
      const { left, top, right, bottom } = boundsOf(mark);
      const [x1, y1, x2, y2] = [left - 1, top - 1, right + 1, bottom + 1].map(millimetresOf);
      const paints = paintsOf(mark, "light");
      for (const spot of gridOf(x1!, y1!, x2!, y2!, (x2! - x1!) / 31)) {
        const at = { x: gridUnitsOf(spot.x), y: gridUnitsOf(spot.y) };
        if (colourAt(paints, spot) === undefined) continue;
        inked++;
        expect(distanceTo(mark, at)).toBeLessThanOrEqual(tip);
        expect(at.x > left - tip && at.x < right + tip && at.y > top - tip && at.y < bottom + tip).toBe(true);
      }
    }
    expect(inked).toBeGreaterThan(2000);
  });

  test("what is hit is inked or within a gap of the pattern or the inside of an outline", () => {
    const solid = small.filter(
      (mark) => "role" in mark && ["solid", "wire-powered", "contact-now"].includes(mark.role),
    );
    expect(solid.length).toBeGreaterThan(5);
    for (const mark of solid) {
      const { left, top, right, bottom } = boundsOf(mark);
      const [x1, y1, x2, y2] = [left - 1, top - 1, right + 1, bottom + 1].map(millimetresOf);
      const paints = paintsOf(mark, "light");
      for (const spot of gridOf(x1!, y1!, x2!, y2!, 0.37)) {
        const at = { x: gridUnitsOf(spot.x), y: gridUnitsOf(spot.y) };
        if (distanceTo(mark, at) === 0) expect(colourAt(paints, spot)).toBeDefined();
      }
    }
  });
});
