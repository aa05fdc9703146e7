import PDFDocument from "pdfkit";
import { expect, test } from "vitest";
import { FONT_WIDTHS } from "../../core/drawing/fontWidths.ts";
import { CAP_HEIGHT, pointsToGrid, textWidth } from "../../core/drawing/type.ts";
import { fontBytes, TYPE_FEATURES } from "../../electron/print/fonts.ts";
import { advanceOf, coveredCodePoints, openFont, WEIGHTS } from "../pictures/fontWidths.ts";

test.each(WEIGHTS)("the width table of weight %i is what the shipped font says", (weight) => {
  const font = openFont(weight);
  const table = FONT_WIDTHS[weight].flatMap(([first, widths]) => widths.map((width, i) => [first + i, width] as const));
  const fromFont = coveredCodePoints(font).map((code) => [code, advanceOf(font, code)] as const);
  expect(table).toEqual(fromFont);
  expect(font.familyName).toMatch(/^IBM Plex Sans Cond/);
  expect(font.capHeight / font.unitsPerEm).toBeCloseTo(CAP_HEIGHT, 3);
});

const LINES = [
  "Probe-order checklist",
  "12.0 – 12.3 V",
  "battery −",
  "AVATo Tyre, fi ffi fl: kerning and ligatures would tell here",
  "X5-4 OG/BK 2.5 mm² · 0.4 Ω, 20 °C, 10 µA",
  "Schließer öffnet, façade, Škoda, Łódź, ÿ",
  "“Maker’s procedure” → licensed practice first…",
  "Il1 O0 1/2 ± ≤ ≥ ×",
];

test.each(WEIGHTS)("a line of weight %i is as wide in the PDF as the table says, within 0.5 %%", (weight) => {
  const pdf = new PDFDocument({ autoFirstPage: false, font: "" });
  pdf.registerFont("tried", fontBytes(weight)).font("tried").fontSize(10);
  for (const line of LINES) {
    const inPdf = pointsToGrid(pdf.widthOfString(line, { features: TYPE_FEATURES as unknown as [] }));
    expect(Math.abs(textWidth(line, 10, weight) / inPdf - 1), line).toBeLessThan(0.005);
  }
});

test("every figure is as wide as every other, so that columns of readings stand", () => {
  for (const weight of WEIGHTS) {
    const widths = new Set([..."0123456789"].map((figure) => textWidth(figure, 10, weight)));
    expect(widths.size).toBe(1);
  }
});

test("an accent typed apart counts as the letter it makes", () => {
  expect(textWidth("e\u0301", 10, 400)).toBe(textWidth("é", 10, 400));
});

test("a sign that the font lacks still takes room", () => {
  expect(textWidth("漢", 10, 400)).toBeGreaterThan(0);
});
