import { expect, test } from "vitest";
import { gridUnitsOf } from "../../core/drawing/scale.ts";
import { embeddedFonts } from "../../electron/print/fonts.ts";
import { htmlOf } from "../../electron/print/html.ts";
import { specimen } from "../pictures/specimen.ts";

const across = { width: gridUnitsOf(254), height: gridUnitsOf(186), marks: [] };
const options = { paper: "letter", palette: "black", title: "<b>Sheets</b>" } as const;

test("each sheet is a section with its own drawing, on a page of its shape", () => {
  const html = htmlOf([specimen(), across], options);
  expect(html.match(/<section /g)?.length).toBe(2);
  expect(html.match(/<svg /g)?.length).toBe(2);
  expect(html).toContain("@page upright { size: 215.9mm 279.4mm; margin: 0; }");
  expect(html).toContain("@page across { size: 279.4mm 215.9mm; margin: 0; }");
});

test("the page holds no scripts and reaches for nothing outside", async () => {
  const html = htmlOf([specimen()], { ...options, fonts: await embeddedFonts() });
  const own = html.replaceAll(/url\("data:[^"]*"\)|xmlns="[^"]*"/g, "");
  expect(own).not.toMatch(/<script|<link|<img|@import|\son[a-z]+=|https?:|url\(/);
  expect(html.match(/url\("data:font\/woff2;base64,/g)?.length).toBe(3);
  expect(html).toContain("default-src 'none'");
});

test("a title cannot become markup", () => {
  expect(htmlOf([], options)).toContain("<title>&lt;b&gt;Sheets&lt;/b&gt;</title>");
});
