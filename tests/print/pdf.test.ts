import { spawnSync } from "node:child_process";
import { inflateSync } from "node:zlib";
import { expect, test } from "vitest";
import type { Drawing } from "../../core/drawing/mark.ts";
import { gridUnitsOf } from "../../core/drawing/scale.ts";
import { pdfOf } from "../../electron/print/pdf.ts";
import { specimen } from "../pictures/specimen.ts";

const options = {
  paper: "a4",
  palette: "black",
  title: "Specimen (1)",
  made: new Date("2026-01-02T03:04:05Z"),
} as const;
const across: Drawing = { width: gridUnitsOf(420), height: gridUnitsOf(297), marks: [] };

const pageSizes = (pdf: Buffer): readonly string[] =>
  [...pdf.toString("latin1").matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)].map(
    ([, width, height]) => `${Math.round(Number(width))} x ${Math.round(Number(height))}`,
  );

/** The drawing commands of every page, unpacked. */
function contents(pdf: Buffer): string {
  const pages: string[] = [];
  for (const found of pdf.toString("latin1").matchAll(/\/Filter \/FlateDecode\n>>\nstream\n/g)) {
    const start = found.index + found[0].length;
    const end = pdf.indexOf("\nendstream", start);
    const text = inflateSync(pdf.subarray(start, end)).toString("latin1");
    if (/ (cm|re|Tf)\n/.test(text)) pages.push(text);
  }
  return pages.join("\n");
}

test("each sheet is a page of the paper asked for, turned as the sheet is", async () => {
  expect(pageSizes(await pdfOf([specimen(), specimen(), across], options))).toEqual([
    "595 x 842",
    "595 x 842",
    "842 x 595",
  ]);
  expect(pageSizes(await pdfOf([specimen()], { ...options, paper: "letter" }))).toEqual(["612 x 792"]);
});

test("the same sheets made at the same time are the same bytes", async () => {
  const once = await pdfOf([specimen()], options);
  expect(once.equals(await pdfOf([specimen()], options))).toBe(true);
  expect(once.equals(await pdfOf([specimen()], { ...options, made: new Date(0) }))).toBe(false);
});

test("one family of type is embedded, in three weights, and no other font is named", async () => {
  const pdf = (await pdfOf([specimen()], options)).toString("latin1");
  const fonts = new Set([...pdf.matchAll(/\/BaseFont \/(\S+)/g)].map(([, name]) => name!.replace(/^[A-Z]{6}\+/, "")));
  expect([...fonts].sort()).toEqual(["IBMPlexSansCond", "IBMPlexSansCond-Bold", "IBMPlexSansCond-SmBld"]);
  expect(pdf.match(/\/FontFile2/g)?.length).toBe(3);
});

test("the file tells its title, language and day of making", async () => {
  const pdf = (await pdfOf([specimen()], options)).toString("latin1");
  for (const written of ["(Specimen \\(1\\))", "/Lang (en)", "/DisplayDocTitle true", "(D:20260102030405Z)"]) {
    expect(pdf.includes(written), written).toBe(true);
  }
});

test("black print sets no colour but black and white; colour print does", async () => {
  const tones = (text: string) => new Set([...text.matchAll(/^([\d. ]+) (?:scn|SCN)$/gm)].map(([, tone]) => tone));
  expect(tones(contents(await pdfOf([specimen()], options)))).toEqual(new Set(["0 0 0", "1 1 1"]));
  expect(tones(contents(await pdfOf([specimen()], { ...options, palette: "light" }))).size).toBeGreaterThan(20);
});

test("the text can be found and copied, signs outside Latin included", async () => {
  const pdf = await pdfOf([specimen()], options);
  const { stdout } = spawnSync("pdftotext", ["-", "-"], { input: pdf, encoding: "utf8" });
  for (const words of ["battery −", "X5-4", "Ω", "→", "2.5 mm²", "Maker’s"]) expect(stdout).toContain(words);
});

test("no sheets make a file without pages rather than a failure", async () => {
  expect(pageSizes(await pdfOf([], options))).toEqual([]);
});
