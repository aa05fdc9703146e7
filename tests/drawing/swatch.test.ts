import { expect, test } from "vitest";
import type { SwatchMark } from "../../core/drawing/mark.ts";
import { gridUnitsOf } from "../../core/drawing/scale.ts";
import { swatchPaints } from "../../core/drawing/swatch.ts";
import { COLOUR_NAMES, type ColourWord, colourNamed, HATCHES } from "../../core/trade/colourNames.ts";
import { colourAt, differenceOf, gridOf, inkAt } from "./raster.ts";

const swatch = (base: ColourWord, ...stripes: readonly ColourWord[]): SwatchMark => ({
  mark: "swatch",
  at: { x: 0, y: 0 },
  width: gridUnitsOf(9),
  height: gridUnitsOf(3.4),
  base: colourNamed(base),
  stripes: stripes.map(colourNamed),
});
const black = (base: ColourWord, ...stripes: readonly ColourWord[]) => swatchPaints(swatch(base, ...stripes), "black");
const spots = gridOf(0, 0, 9, 3.4, 0.07);
const inked = (base: ColourWord, ...stripes: readonly ColourWord[]) => inkAt(black(base, ...stripes), "#000000", spots);

test("a single stripe takes the middle 36 percent in its own colour", () => {
  const paints = swatchPaints(swatch("yellow", "black"), "light");
  expect(colourAt(paints, { x: 4, y: 1.0 })).toBe(colourNamed("yellow").hex);
  expect(colourAt(paints, { x: 4, y: 1.12 })).toBe(colourNamed("black").hex);
  expect(colourAt(paints, { x: 4, y: 2.28 })).toBe(colourNamed("black").hex);
  expect(colourAt(paints, { x: 4, y: 2.4 })).toBe(colourNamed("yellow").hex);
});

test("two stripes lie apart with the base between and outside", () => {
  const paints = swatchPaints(swatch("red", "white", "blue"), "light");
  const down = [0.3, 1.0, 1.7, 2.4, 3.0].map((y) => colourAt(paints, { x: 4, y }));
  expect(down).toEqual(["red", "white", "red", "blue", "red"].map((word) => colourNamed(word as ColourWord).hex));
});

test("black ink shows which colour is base and which is stripe", () => {
  expect(differenceOf(inked("black", "yellow"), inked("yellow", "black"))).toBeGreaterThan(0.4);
  expect(colourAt(black("white", "black"), { x: 4, y: 1.7 })).toBe("#000000");
  expect(colourAt(black("white", "black"), { x: 4, y: 0.5 })).toBe("#FFFFFF");
});

test("every hatch stands for one colour, and every colour has one", () => {
  expect(COLOUR_NAMES.map((colour) => colour.hatch).sort()).toEqual([...HATCHES].sort());
});

const words = COLOUR_NAMES.map((colour) => colour.name);

test("the hatches of any two colours can be told apart", () => {
  const inks = words.map((word) => inked(word));
  inks.forEach((ink, i) => {
    inks.slice(i + 1).forEach((other, k) => {
      expect(differenceOf(ink, other), `${words[i]} and ${words[i + 1 + k]}`).toBeGreaterThan(0.2);
    });
  });
});

test.each(words.filter((word) => word !== "white"))("%s leaves ink even in the thin band of a stripe", (word) => {
  const band = gridOf(0.3, 1.3, 8.7, 2.1, 0.06);
  expect(band.filter((spot) => colourAt(black("white", word), spot) === "#000000").length).toBeGreaterThan(0);
});

test("hatch lines stay inside the swatch", () => {
  for (const word of words) {
    const outside = gridOf(-1, -1, 10, 4.4, 0.11).filter(({ x, y }) => x < -0.2 || y < -0.2 || x > 9.2 || y > 3.6);
    expect(outside.filter((spot) => colourAt(black(word), spot) !== undefined)).toEqual([]);
  }
});
