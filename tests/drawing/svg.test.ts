import { expect, test } from "vitest";
import type { Drawing, Mark } from "../../core/drawing/mark.ts";
import { escaped, svgOf } from "../../core/drawing/svg.ts";
import { specimen } from "../pictures/specimen.ts";

const text = (words: string, of?: string): Mark => ({
  mark: "text",
  at: { x: 4, y: 8 },
  text: words,
  points: 10,
  weight: 600,
  anchor: "middle",
  role: "text",
  turn: -90,
  ...(of !== undefined && { of }),
});
const drawing = (...marks: readonly Mark[]): Drawing => ({ width: 74.4, height: 101.6, marks });

/** Names of the elements still open at the end; throws where tags do not nest. */
function leftOpen(xml: string): readonly string[] {
  const open: string[] = [];
  for (const [, close, name, self] of xml.matchAll(/<(\/?)([a-z]+)(?:\s[a-zA-Z:-]+="[^"<]*")*(\/?)>/g)) {
    if (close) {
      if (open.pop() !== name) throw new Error(`</${name}> closes nothing`);
    } else if (!self) open.push(name!);
  }
  return open;
}

test("the sheet has its size in millimetres and the millimetre as its unit", () => {
  expect(svgOf(drawing(), { palette: "light" })).toMatch(
    /^<svg [^>]*width="186mm" height="254mm" viewBox="0 0 186 254"/,
  );
});

test("type stands at its spot in millimetres, with its anchor, weight and turn", () => {
  const svg = svgOf(drawing(text("X5-4")), { palette: "black" });
  expect(svg).toContain(
    '<text x="10" y="20" font-size="3.528" font-weight="600" text-anchor="middle" transform="rotate(-90 10 20)"' +
      ' fill="#000000">X5-4</text>',
  );
});

test("text of a person cannot become markup, in content, titles or names", () => {
  const evil = `"><script>alert('1')</script>&\u0000\ud800`;
  const svg = svgOf({ ...drawing(text(evil, evil)), title: evil }, { palette: "light" });
  expect(svg).not.toContain("<script");
  expect(svg).not.toMatch(/&(?!amp;|lt;|gt;|quot;)/);
  expect(svg).not.toContain("\u0000");
  expect(leftOpen(svg)).toEqual([]);
  expect(escaped("a\ud800b\ufffe")).toBe("a\ufffdb\ufffd");
});

test("every tag of the specimen is closed and every number is plain", () => {
  const svg = svgOf(specimen(), { palette: "dark" });
  expect(leftOpen(svg)).toEqual([]);
  expect(svg).not.toMatch(/NaN|Infinity|undefined|-0[ "]|\de-\d/);
});

test("marks in a row that belong to one thing share a titled group", () => {
  const svg = svgOf(drawing(text("a", "W13"), text("b", "W13"), text("c")), { palette: "light" });
  expect(svg.match(/<g data-of="W13">\n {4}<title>W13<\/title>/g)?.length).toBe(1);
  expect(leftOpen(svg)).toEqual([]);
});

test("a dashed pair is cut into dashes that stay side by side past a corner", () => {
  const spots = [
    { x: 0, y: 0 },
    { x: 4, y: 0 },
    { x: 4, y: 4 },
  ];
  const svg = svgOf(drawing({ mark: "line", spots, role: "wire-grounded-through-load" }), { palette: "light" });
  const paths = [...svg.matchAll(/<path d="([^"]+)"/g)].map(([, d]) => d!);
  expect(paths.length).toBe(2);
  const dashes = paths.map((d) => d.split("M").length - 1);
  expect(dashes[0]).toBe(dashes[1]);
  expect(svg).not.toContain("stroke-dasharray");
});

test("fonts are named in the file, and a drawing inside a page leaves style to the page", () => {
  const fonts = { 400: "a.woff", 600: "b.woff", 700: "c.woff" };
  expect(svgOf(drawing(), { palette: "light", fonts }).match(/@font-face/g)?.length).toBe(3);
  expect(svgOf(drawing(), { palette: "light" })).not.toContain("@font-face");
  expect(svgOf(drawing(), { palette: "light", inPage: true })).not.toContain("<style");
  expect(svgOf(drawing(), { palette: "light", isClear: true })).not.toContain("<rect");
});

test("a line of one spot, an empty text and no marks draw nothing", () => {
  const dot: Mark = { mark: "line", spots: [{ x: 1, y: 1 }], role: "symbol" };
  expect(svgOf(drawing(dot, text("")), { palette: "light" })).toBe(svgOf(drawing(), { palette: "light" }));
});
