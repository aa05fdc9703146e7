import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { printedSpot } from "../../core/circuit/underlays.ts";
import { rectangle } from "../../core/drawing/projection.ts";
import { formatCircuit, readCircuit } from "../../schemas/circuit.ts";
import { PHOTO, printedOn, SHEET } from "../circuit/printed.ts";
import { SMALL } from "../circuit/small.ts";

/** What reading gives for a circuit: "read", or the refusal's code and path. */
function answer(circuit: unknown): string {
  const read = readCircuit(JSON.stringify(circuit));
  return read.ok ? "read" : `${read.refusal.code} ${read.refusal.about.path}`;
}

const printed = printedOn(SMALL);

/** The circuit with other fields of its first printed page. */
function sheet(fields: Readonly<Record<string, unknown>>): unknown {
  const [first, ...pages] = printed.pages;
  return { ...printed, pages: [{ ...first, underlays: [{ ...SHEET, ...fields }, PHOTO] }, ...pages] };
}

/** The circuit with its first part tied so. */
function tied(to: unknown): unknown {
  const [first, ...parts] = printed.parts;
  return { ...printed, parts: [{ ...first, printed: to }, ...parts] };
}

describe("printed pages in a circuit file", () => {
  test("are read as they are written, with what is tied to them", () => {
    const text = formatCircuit(printed);
    const read = readCircuit(text);
    expect(read).toEqual({ ok: true, value: printed });
    expect(text).toContain('"printed": { "underlay": "u1", "x": 300, "y": 200 }');
  });

  test("are absent where there are none: samples keep their bytes", () => {
    for (const name of ["1-roof-vents", "8-wiper"]) {
      const text = readFileSync(new URL(`../../samples/${name}.circuit.json`, import.meta.url), "utf8");
      const read = readCircuit(text);
      expect(read.ok && formatCircuit(read.value)).toBe(text);
      expect(text).not.toContain("underlays");
    }
  });

  test("may be an empty list, which stays one", () => {
    const empty = { ...SMALL, pages: SMALL.pages.map((page) => ({ ...page, underlays: [] })) };
    const read = readCircuit(formatCircuit(empty));
    expect(read.ok && formatCircuit(read.value)).toBe(formatCircuit(empty));
  });

  test.each([
    [
      "a turned one",
      sheet({
        corners: [
          [200, 0],
          [200, 100],
          [0, 100],
          [0, 0],
        ],
      }),
      "read",
    ],
    [
      "all that can be said of its look",
      sheet({ opacity: 0, contrast: 4, whiteOut: true, isLocked: true, isHidden: true }),
      "read",
    ],
    [
      "a name that is no hash",
      sheet({ image: { ...SHEET.image, sha256: "../../etc" } }),
      "file-name pages[0].underlays[0].image.sha256",
    ],
    [
      "a hash in capitals",
      sheet({ image: { ...SHEET.image, sha256: "AB".repeat(32) } }),
      "file-name pages[0].underlays[0].image.sha256",
    ],
    [
      "another kind of picture",
      sheet({ image: { ...SHEET.image, mime: "image/svg+xml" } }),
      "file-choice pages[0].underlays[0].image.mime",
    ],
    [
      "a side too long",
      sheet({ image: { ...SHEET.image, widthPx: 12_001 } }),
      "file-limit pages[0].underlays[0].image.widthPx",
    ],
    [
      "too many pixels",
      sheet({ image: { ...SHEET.image, widthPx: 6_000, heightPx: 6_000 } }),
      "picture-pixels pages[0].underlays[0].image",
    ],
    [
      "folded corners",
      sheet({
        corners: [
          [0, 0],
          [9, 9],
          [9, 0],
          [0, 9],
        ],
      }),
      "corners-fold pages[0].underlays[0].corners",
    ],
    [
      "three corners",
      sheet({
        corners: [
          [0, 0],
          [9, 0],
          [9, 9],
        ],
      }),
      "file-limit pages[0].underlays[0].corners",
    ],
    [
      "a corner far off",
      sheet({ corners: rectangle(0, 0, 20_001, 10) }),
      "file-limit pages[0].underlays[0].corners[1][0]",
    ],
    [
      "a cut off the picture",
      sheet({ cut: rectangle(0, 0, 2_400, 100) }),
      "spot-off-picture pages[0].underlays[0].cut",
    ],
    ["a folded cut", sheet({ cut: rectangle(0, 0, -0, 100) }), "corners-fold pages[0].underlays[0].cut"],
    ["too faint", sheet({ opacity: -0.1 }), "file-limit pages[0].underlays[0].opacity"],
    ["a field of another program", sheet({ blend: "multiply" }), "file-field-unknown pages[0].underlays[0]"],
    ["an id twice", sheet({ id: "u2" }), "twice pages[1]"],
    ["a tie to none", tied({ underlay: "u9", x: 1, y: 1 }), "underlay-unknown parts[0].printed.underlay"],
    ["a tie off the picture", tied({ underlay: "u1", x: 2_340, y: 1 }), "spot-off-picture parts[0].printed"],
    ["a tie before the picture", tied({ underlay: "u1", x: -1, y: 1 }), "file-limit parts[0].printed.x"],
  ])("%s", (_, circuit, expected) => expect(answer(circuit)).toBe(expected));
});

describe("the place of something on the printed page", () => {
  const at = (circuit: Circuit) => printedSpot(circuit, { underlay: "u1", x: 1_169.5, y: 827 })!;

  test("follows the printed page where it is laid", () => {
    expect(at(printed)).toMatchObject({ x: 148.5, y: 105, page: { id: "p1" } });
    expect(at(printedOn(SMALL, { corners: rectangle(10, 20, 100, 50) }))).toMatchObject({ x: 60, y: 45 });
  });

  test("is nowhere when the printed page is gone", () =>
    expect(printedSpot(SMALL, { underlay: "u1", x: 0, y: 0 })).toBeNull());
});
