import { mkdirSync, writeFileSync } from "node:fs";
import { join, resolve, sep } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { pageFile, pathInside } from "../../electron/pages.ts";
import { ownFolder } from "./library.ts";

describe("the way to a page's file", () => {
  const piece = fc.oneof(
    fc.constantFrom(
      "..",
      ".",
      "",
      "%2e%2e",
      "%2f",
      "%5c",
      "\\",
      "/",
      "%00",
      "%252e",
      "~",
      "C:",
      "a",
      "index.html",
      "..%c0%af",
    ),
    fc.string({ unit: "binary", maxLength: 6 }),
  );

  it("never leads out of the folder, whatever the address", () => {
    const folder = resolve("/some/place/pages");
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 8 }), fc.constantFrom("/", "", "%2f"), (pieces, between) => {
        const path = pathInside(folder, `/${pieces.join(between)}`);
        if (path !== null) expect(resolve(path).startsWith(folder + sep)).toBe(true);
      }),
      { numRuns: 2_000 },
    );
  });

  it("leads to plain names, and to the index of a folder", () => {
    const folder = resolve("/some/place/pages");
    expect(pathInside(folder, "/")).toBe(join(folder, "index.html"));
    expect(pathInside(folder, "/assets/IBM%20Plex-1a_b.woff2")).toBe(join(folder, "assets", "IBM Plex-1a_b.woff2"));
    expect(pathInside(folder, "index.html")).toBeNull();
  });

  it("gives bytes and kind of a file that a page is made of", async () => {
    const folder = ownFolder();
    mkdirSync(join(folder, "assets"));
    writeFileSync(join(folder, "assets", "w.mjs"), "1");
    const file = await pageFile(folder, "/assets/w.mjs");
    expect({ type: file?.type, bytes: [...(file?.bytes ?? [])] }).toEqual({
      type: "text/javascript; charset=utf-8",
      bytes: [49],
    });
    expect(await pageFile(join(folder, "not-built"), "/")).toBeNull();
  });
});
