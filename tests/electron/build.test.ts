import { readFileSync } from "node:fs";
import { isBuiltin } from "node:module";
import { basename, join } from "node:path";
import { describe, expect, it } from "vitest";
import { buildTakeHome, buildWindow } from "../../electron/build.ts";
import { fontPaths } from "../../electron/print/fonts.ts";
import { takeHomePage, takeHomeParts } from "../../electron/print/takeHome.ts";
import { ownFolder, value } from "./library.ts";
import { ROOT, sample } from "./sample.ts";

describe("what take-home pages are made of", () => {
  it("is one script that ends no element, loads nothing, and makes of sample 1 a page of at most 600 kB", async () => {
    const folder = ownFolder();
    await buildTakeHome(ROOT, folder);
    const parts = value(await takeHomeParts(folder));
    expect(parts.script).not.toMatch(/<\/script|<!--|\bimport\(|\bfetch\(|XMLHttpRequest/);
    // Whose work goes along, and on what terms, stands in the page itself.
    const { script: exercise } = value(await takeHomeParts(folder, "exercise"));
    for (const script of [parts.script, exercise]) {
      expect(script).toMatch(/^\/\*![\s\S]+SIL OPEN FONT LICENSE[\s\S]+\*\//);
      // A page reads every end of a line as one sign: with another, the script has not the hash that lets it run.
      expect(script).not.toContain("\r");
    }
    expect(parts.script).toMatch(/\nzustand \d[\s\S]+Permission is hereby granted/);
    expect(exercise).toMatch(/\nzod \d[\s\S]+Permission is hereby granted/);
    expect(parts.style).not.toMatch(/<\/style|@import|url\("(?!data:)/);
    const page = takeHomePage(sample(undefined, "1-roof-vents"), parts);
    expect(Buffer.byteLength(page)).toBeLessThanOrEqual(600_000);
  });
});

describe("the built window", () => {
  it("is one file each of CommonJS, and its preload loads nothing but Electron", async () => {
    const folder = ownFolder();
    await buildWindow(ROOT, folder);
    const text = (name: string): string => readFileSync(join(folder, `${name}.cjs`), "utf8");
    const required = (name: string): readonly string[] =>
      [...new Set([...text(name).matchAll(/\brequire\("([^"]+)"\)/g)].map((match) => match[1]!))].toSorted();
    expect(required("preload")).toEqual(["electron"]);
    const packages = (name: string) => required(name).filter((each) => !isBuiltin(each));
    expect(packages("main")).toEqual(["better-sqlite3", "electron"]);
    expect(packages("printer")).toEqual([]);
    for (const path of fontPaths())
      expect(readFileSync(join(folder, "fonts", basename(path)))).toEqual(readFileSync(path));
    for (const name of ["main", "preload", "printer"]) {
      expect(text(name)).not.toMatch(/\bimport\.meta\b|^import /m);
    }
    expect(text("preload").length).toBeLessThan(5_000);
  });
});
