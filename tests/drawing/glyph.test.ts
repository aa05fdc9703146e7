import { describe, expect, test } from "vitest";
import { WIRE_STATES, type WireState } from "../../core/base/states.ts";
import { chassisMarks, chevronMarks, GLYPH_WIDTH, glyphMarks } from "../../core/drawing/glyph.ts";
import { boundsOfAll } from "../../core/drawing/measure.ts";
import { paintsOf } from "../../core/drawing/paintMark.ts";
import { gridUnitsOf, millimetresOf } from "../../core/drawing/scale.ts";
import { differenceOf, gridOf, inkAt } from "./raster.ts";

const centre = { x: 2, y: 2 };
const spots = gridOf(3, 3, 7, 7, 0.1);
const painted = (state: WireState) => {
  const paints = glyphMarks(state, centre).flatMap((mark) => paintsOf(mark, "black"));
  return inkAt(paints, "#000000", spots);
};
const pairs = WIRE_STATES.flatMap((one, i) => WIRE_STATES.slice(i + 1).map((other) => ({ one, other })));

test.each(pairs)("$one and $other differ in at least a third of their ink, in black alone", ({ one, other }) => {
  expect(differenceOf(painted(one), painted(other))).toBeGreaterThan(1 / 3);
});

test.each(WIRE_STATES)("the glyph of %s is centred and keeps to its width", (state) => {
  const { left, top, right, bottom } = boundsOfAll(glyphMarks(state, centre))!;
  const half = GLYPH_WIDTH / 2 + 0.06;
  expect(left).toBeGreaterThanOrEqual(centre.x - half);
  expect(right).toBeLessThanOrEqual(centre.x + half);
  expect(top).toBeGreaterThanOrEqual(centre.y - half);
  expect(bottom).toBeLessThanOrEqual(centre.y + half);
  expect(right - left).toBeGreaterThan(GLYPH_WIDTH * 0.4);
  expect(bottom - top).toBeGreaterThan(GLYPH_WIDTH * 0.7);
});

test.each([
  ["powered", "powered-through-load"],
  ["grounded", "grounded-through-load"],
] as const)("the hollow glyph of %s fills nearly the room of the filled one", (filled, hollow) => {
  const extent = (state: WireState) => {
    const ink = painted(state);
    const inked = spots.filter((_, i) => ink[i]);
    const [xs, ys] = [inked.map((spot) => spot.x), inked.map((spot) => spot.y)];
    return [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
  };
  const [width, height] = extent(filled);
  const [hollowWidth, hollowHeight] = extent(hollow);
  expect(Math.abs(hollowWidth! - width!)).toBeLessThan(0.5);
  expect(Math.abs(hollowHeight! - height!)).toBeLessThan(0.5);
});

test("always fed adds a bar as wide as the glyph, below it and touching nothing", () => {
  const plain = boundsOfAll(glyphMarks("powered", centre))!;
  const marks = glyphMarks("powered", centre, { alwaysFed: true });
  const bar = boundsOfAll(marks.slice(-1))!;
  expect(bar.top).toBeGreaterThan(plain.bottom);
  expect(bar.right - bar.left).toBeCloseTo(GLYPH_WIDTH, 6);
});

test("a glyph says whose it is", () => {
  expect(glyphMarks("clash", centre, { of: "W7" }).every((mark) => mark.of === "W7")).toBe(true);
  expect(glyphMarks("clash", centre).some((mark) => mark.of !== undefined)).toBe(false);
});

describe("the chevron", () => {
  test.each([
    [0, 1.5, 0],
    [90, 0, 1.5],
    [180, -1.5, 0],
    [-90, 0, -1.5],
  ])("at %i degrees points along x %f, y %f", (degrees, x, y) => {
    const tip = chevronMarks(centre, degrees).at(-1)!;
    const at = tip.mark === "line" ? tip.spots[0]! : centre;
    expect(millimetresOf(at.x - centre.x)).toBeCloseTo(x, 6);
    expect(millimetresOf(at.y - centre.y)).toBeCloseTo(y, 6);
  });

  test("has an edge of paper all round and the hue of its wire", () => {
    const [edge, dart] = chevronMarks(centre, 0, "grounded");
    expect(edge!.mark !== "swatch" && edge!.role).toBe("paper");
    expect(dart!.mark !== "swatch" && dart!.role).toBe("glyph-grounded");
    const [outer, inner] = [boundsOfAll([edge!])!, boundsOfAll([dart!])!];
    expect(outer.left).toBeLessThan(inner.left - gridUnitsOf(0.1));
    expect(outer.top).toBeLessThan(inner.top - gridUnitsOf(0.1));
  });
});

test("the sign of a body ground is one level line and three slanting ones, never the levels of an earth sign", () => {
  const marks = chassisMarks(centre);
  const slopes = marks.map((mark) => (mark.mark === "line" ? mark.spots[1]!.y - mark.spots[0]!.y : Number.NaN));
  expect(slopes.filter((rise) => rise === 0).length).toBe(1);
  expect(slopes.filter((rise) => rise > 0).length).toBe(3);
});
