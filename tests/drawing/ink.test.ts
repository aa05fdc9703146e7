import { expect, test } from "vitest";
import { WIRE_STATES, type WireState } from "../../core/base/states.ts";
import { PALETTES, type Palette, paperColour, strokesOf } from "../../core/drawing/ink.ts";
import { ROLES } from "../../core/drawing/mark.ts";

const cases = ROLES.flatMap((role) => PALETTES.map((palette) => ({ role, palette })));

test.each(cases)("$role has ink in $palette: a stroke or a fill, in whole colours and lengths above zero", (each) => {
  const { strokes, fill, ground } = strokesOf(each.role, each.palette);
  expect(strokes.length > 0 || fill !== undefined).toBe(true);
  const colours = [...strokes.map((stroke) => stroke.colour), fill, ground].filter((colour) => colour !== undefined);
  for (const colour of colours) expect(colour).toMatch(/^#[0-9A-F]{6}$/);
  for (const { width, dash = [1, 1] } of strokes) {
    expect(width).toBeGreaterThanOrEqual(0.12);
    expect(dash.length % 2).toBe(0);
    for (const length of dash) expect(length).toBeGreaterThan(0);
  }
});

test("black ink is black on white and nothing between", () => {
  const colours = ROLES.flatMap((role) => {
    const { strokes, fill, ground } = strokesOf(role, "black");
    return [...strokes.map((stroke) => stroke.colour), fill, ground];
  });
  expect(new Set(colours.filter((colour) => colour !== undefined))).toEqual(new Set(["#000000", "#FFFFFF"]));
});

test.each(ROLES.filter((role) => role !== "contact-rest"))("%s has the same sizes in every palette", (role) => {
  const sizes = (palette: Palette) => strokesOf(role, palette).strokes.map(({ colour, ...size }) => size);
  expect(sizes("dark")).toEqual(sizes("light"));
  expect(sizes("black")).toEqual(sizes("light"));
});

test("every wire state has a line of its own without colour", () => {
  const lines = WIRE_STATES.map((state) => JSON.stringify(strokesOf(`wire-${state}`, "black").strokes));
  expect(new Set(lines).size).toBe(WIRE_STATES.length);
});

test("a grounded wire is a pair of lines with paper between them", () => {
  const [left, right] = strokesOf("wire-grounded", "light").strokes;
  expect(left!.offset).toBe(-right!.offset!);
  expect(right!.offset! - left!.offset!).toBeGreaterThan(left!.width);
});

/** Relative luminance of an sRGB colour (WCAG 2.2, definition of relative luminance). */
function luminance(hex: string): number {
  const [red, green, blue] = [1, 3, 5].map((i) => {
    const share = Number.parseInt(hex.slice(i, i + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
}

/** Contrast ratio of two colours (WCAG 2.2, definition of contrast ratio). */
function contrast(a: string, b: string): number {
  const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (light! + 0.05) / (dark! + 0.05);
}

const shown = (["light", "dark"] as const).flatMap((palette) => WIRE_STATES.map((state) => ({ palette, state })));

test.each(shown)("$state stands out from a $palette sheet by 5 to 1", ({ palette, state }) => {
  for (const role of [`wire-${state}`, `glyph-${state}`] as const) {
    expect(contrast(strokesOf(role, palette).fill!, paperColour(palette))).toBeGreaterThanOrEqual(5);
  }
});

test.each(["light", "dark"] as const)("type on a %s sheet has the contrast of small text, 4.5 to 1", (palette) => {
  // WCAG 2.2, success criterion 1.4.3
  for (const role of ["text", "text-quiet"] as const) {
    const fill = strokesOf(role, palette).fill!;
    expect(contrast(fill, paperColour(palette))).toBeGreaterThanOrEqual(4.5);
    expect(contrast(fill, strokesOf("body", palette).fill!)).toBeGreaterThanOrEqual(4.5);
  }
});

test("no state's hue is a colour of type", () => {
  const hues = (palette: Palette) => WIRE_STATES.map((state: WireState) => strokesOf(`wire-${state}`, palette).fill);
  for (const palette of ["light", "dark"] as const) {
    for (const role of ["text", "text-quiet"] as const) {
      expect(hues(palette)).not.toContain(strokesOf(role, palette).fill);
    }
  }
});
