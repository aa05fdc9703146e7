import { describe, expect, test } from "vitest";
import { gridUnitsOf } from "../../core/drawing/scale.ts";
import { isPaper, PAPERS, type Paper, placingOn } from "../../core/paper/placing.ts";

const sheet = (width: number, height: number) => ({
  width: gridUnitsOf(width),
  height: gridUnitsOf(height),
  marks: [],
});
const upright = sheet(186, 254);
const across = sheet(254, 186);

test("the common sheet lies on A4 and Letter at full size, with room for the clip of a board", () => {
  const a4 = placingOn(upright, "a4");
  expect(a4.scale).toBe(1);
  expect(a4.left).toBeCloseTo(12, 9);
  expect(a4.top).toBe(15);
  const letter = placingOn(upright, "letter");
  expect(letter.scale).toBe(1);
  expect(letter.left).toBeCloseTo(14.95, 9);
  expect(letter.top).toBe(15);
  expect(letter.pageHeight - letter.top - 254).toBeCloseTo(10.4, 9);
});

test("a sheet wider than high turns the paper", () => {
  expect(placingOn(across, "a4")).toMatchObject({ pageWidth: 297, pageHeight: 210, scale: 1 });
  expect(placingOn(across, "letter")).toMatchObject({ pageWidth: 279.4, pageHeight: 215.9, scale: 1 });
  expect(placingOn(across, "a4").top).toBeCloseTo(12, 9);
});

describe.each(Object.keys(PAPERS) as Paper[])("on %s", (paper) => {
  test.each([
    [186, 254],
    [254, 186],
    [420, 297],
    [297, 420],
    [1189, 841],
    [900, 50],
  ])("a drawing of %i x %i mm is never enlarged and keeps 8 mm to every edge", (width, height) => {
    const { pageWidth, pageHeight, left, top, scale } = placingOn(sheet(width, height), paper);
    expect(scale).toBeLessThanOrEqual(1);
    for (const margin of [left, top, pageWidth - left - width * scale, pageHeight - top - height * scale]) {
      expect(margin).toBeGreaterThanOrEqual(8 - 1e-9);
    }
  });
});

test("only the names of papers are papers", () => {
  expect(isPaper("a4")).toBe(true);
  expect(isPaper("A4")).toBe(false);
  expect(isPaper("toString")).toBe(false);
});
